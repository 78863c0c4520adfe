/** The planted numbers, found again by the survey on the written file. */
import { readModel } from '@coveline/cad';
import { type Place, type SurveyMeasures, survey } from '@coveline/survey';
import { beforeAll, describe, expect, it } from 'vitest';
import { type PlantedFault, plantedFaults } from './faults.ts';
import { startKernel } from './kernel.ts';
import { machine } from './machine.ts';
import { type Parameters, revisionA, revisionB } from './parameters.ts';
import { stepFileName } from './project.ts';
import { writeStep } from './step.ts';

const found = new Map<Parameters, SurveyMeasures>();

beforeAll(async () => {
  await startKernel();
  for (const p of [revisionA, revisionB]) {
    const step = new TextEncoder().encode(writeStep(machine(p), stepFileName(p)));
    const model = await readModel(step, stepFileName(p));
    const { result } = await survey(model, { measures: ['standingLiquid', 'insideCorners', 'hollows'] });
    found.set(p, result.measures);
  }
}, 240_000);

describe.each([revisionA, revisionB])('revision $revision', (p) => {
  it('keeps the planted pools and, but for the jars, no others', () => {
    const places = found.get(p)!.standingLiquid!.places;
    const planted = plantedFaults(p).filter((f) => f.kind === 'standingLiquid');
    for (const fault of planted) {
      const pool = places.find((place) => isAt(place, fault));
      // All planted pools are deeper than 2 mm.
      expect(Math.abs(pool!.volume_mL / value(fault, 'volume') - 1), fault.id).toBeLessThan(0.01);
      expect(pool!.depth_mm, fault.id).toBeCloseTo(value(fault, 'depth'), 1);
    }
    const meant = [...planted, ...plantedFaults(p).filter((f) => f.kind === 'blindHole')];
    const others = places.filter((place) => !meant.some((fault) => isAt(place, fault)));
    expect(others.filter((place) => !place.parts.some((id) => id.includes('/jar 0.35 L glass')))).toEqual([]);
  });

  it('has the planted closed hollows', () => {
    const { closed } = found.get(p)!.hollows!;
    for (const fault of plantedFaults(p).filter((f) => f.kind === 'closedHollow')) {
      const hollow = closed.find((place) => isAt(place, fault));
      expect(Math.abs(hollow!.volume_mL / value(fault, 'volume') - 1), fault.id).toBeLessThan(0.02);
    }
  });

  it('has the planted blind holes', () => {
    const [fault] = plantedFaults(p).filter((f) => f.kind === 'blindHole');
    const holes = found.get(p)!.hollows!.blind.filter((place) => isAt(place, fault));
    expect(holes).toHaveLength(value(fault, 'count'));
    for (const hole of holes) {
      expect(hole.depth_mm).toBeCloseTo(value(fault, 'depth'), 6);
      expect(hole.ratio).toBeCloseTo(value(fault, 'ratio'), 2);
    }
  });

  it('has the planted sharp edges of the drain tray', () => {
    const fault = plantedFaults(p).find((f) => f.id === 'sharp-tray')!;
    const edges = found.get(p)!.insideCorners!.places.filter((c) => isAt(c, fault) && c.radius_mm === 0);
    const length = edges.reduce((sum, edge) => sum + edge.length_mm, 0);
    // Within 1.5 %: the pipe below the tray adds a short edge to it.
    expect(Math.abs(length / value(fault, 'length') - 1)).toBeLessThan(0.015);
  });
});

it('revision A has hopper corners of 1 mm, revision B has none below 6 mm', () => {
  const rounded = (p: Parameters) =>
    found
      .get(p)!
      .insideCorners!.places.filter(
        (c) => c.radius_mm > 0 && c.parts.some((id) => id.endsWith('/hopper 12 L 1.4404')),
      );
  expect(rounded(revisionA).map((c) => c.radius_mm)).toEqual([1, 1, 1, 1]);
  expect(rounded(revisionB)).toEqual([]);
});

function isAt(place: Place, fault: PlantedFault): boolean {
  return place.parts.some((id) => fault.parts.some((name) => id.replace(/#\d+$/, '').endsWith(`/${name}`)));
}

function value(fault: PlantedFault, name: string): number {
  const number = fault.expected.find((n) => n.name === name);
  if (!number) throw new Error(`Fault "${fault.id}" has no number "${name}".`);
  return number.value;
}
