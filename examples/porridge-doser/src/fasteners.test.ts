/** The fasteners that were drawn, found again by the survey on the written file, by their faces and not by their names. */
import { readModel } from '@coveline/cad';
import { type Model, placedPositions } from '@coveline/model';
import { type SurveyMeasures, survey } from '@coveline/survey';
import { beforeAll, describe, expect, it } from 'vitest';
import { type PlantedFault, plantedFaults } from './faults.ts';
import { startKernel } from './kernel.ts';
import { machine } from './machine.ts';
import { type Parameters, revisionA, revisionB } from './parameters.ts';
import { stepFileName } from './project.ts';
import { writeStep } from './step.ts';

type Found = NonNullable<SurveyMeasures['fasteners']>;
const models = new Map<Parameters, Model>();
const found = new Map<Parameters, Found>();

const measured = async (model: Model): Promise<Found> =>
  (await survey(model, { measures: ['fasteners'] })).result.measures.fasteners!;

beforeAll(async () => {
  await startKernel();
  for (const p of [revisionA, revisionB]) {
    const step = new TextEncoder().encode(writeStep(machine(p), stepFileName(p)));
    const model = await readModel(step, stepFileName(p));
    models.set(p, model);
    found.set(p, await measured(model));
  }
}, 240_000);

const named = (parts: readonly string[], name: string) => parts[0].replace(/#\d+$/, '').endsWith(`/${name}`);
const count = (p: Parameters, name: string) =>
  models.get(p)!.parts.filter(({ id }) => named([id], name)).length;

describe.each([revisionA, revisionB])('revision $revision', (p) => {
  it.each([
    ['hex bolt M6x12 A2', 'hexagon', 10],
    ['hex bolt M6x20 A2', 'hexagon', 10],
    ['hex bolt M8x30 A2', 'hexagon', 13],
    ['hex nut M6 ISO 4032 A2', 'nut', 10],
    ['hex nut M8 ISO 4032 A2', 'nut', 13],
    ['hex nut M10 ISO 4032 A2', 'nut', 16],
    ['hex nut M12 ISO 4032 A2', 'nut', 18],
    ['hex nut M16 ISO 4032 A2', 'nut', 24],
  ])('tells every %s', (name, kind, flats) => {
    const heads = found.get(p)!.heads.filter((h) => named(h.parts, name));
    expect(heads).toHaveLength(count(p, name));
    for (const head of heads) {
      expect([head.kind, head.from]).toEqual([kind, 'cad']);
      expect(head.acrossFlats_mm).toBeCloseTo(flats, 6);
    }
  });

  it('tells the domed nuts, which are drawn without a hexagon, by their number', () => {
    const heads = found.get(p)!.heads.filter((h) => named(h.parts, 'domed nut M8 DIN 1587 A2'));
    expect(heads).toHaveLength(count(p, 'domed nut M8 DIN 1587 A2'));
    expect(heads.every((h) => h.kind === 'domedNut' && h.from === 'repeated')).toBe(true);
  });

  it('takes no other part for a fastener than those that are called one', () => {
    const { heads, threads } = found.get(p)!;
    const others = [...heads, ...threads].filter(
      ({ parts }) => !/bolt|nut|screw|stud|threaded/.test(parts[0]),
    );
    // The journal of the drum roller carries a nut, so it is threaded.
    expect(others.every(({ parts }) => named(parts, 'drum roller Ø40 1.4404'))).toBe(true);
  });

  it('finds the bare thread that was planted', () => {
    for (const fault of plantedFaults(p).filter((f) => f.kind === 'exposedThread')) {
      const threads = found.get(p)!.threads.filter((t) => named(t.parts, fault.parts[0]));
      expect(threads, fault.id).toHaveLength(value(fault, 'count'));
      for (const { exposed_mm } of threads) {
        // The flange bolts stand on the edge of their flange, so that half of them is bare within it as well.
        if (fault.id === 'flange-bolts') expect(exposed_mm).toBeGreaterThan(value(fault, 'bare thread'));
        // The rods of the lamp bar carry a nut of 8.4 mm; the rest is to a station of 0.15 mm at either end.
        else {
          const nut = fault.id === 'threaded-hangers' ? 8.4 : 0;
          expect(Math.abs(exposed_mm - (value(fault, 'bare thread') - nut)), fault.id).toBeLessThan(0.2);
        }
      }
    }
  });
});

it('needs no names: the same threads from the same shapes under other names', async () => {
  const model = models.get(revisionA)!;
  const parts = model.parts.map((part, i) => ({ ...part, id: `part ${i}`, name: `part ${i}` }));
  const { heads, threads } = await measured({ ...model, parts });
  const withNames = found.get(revisionA)!;
  const lengths = (t: Found['threads']) => t.map(({ exposed_mm }) => exposed_mm).sort((a, b) => a - b);
  expect(lengths(threads)).toEqual(lengths(withNames.threads));
  // The clamp screws alone are told by their name only.
  expect(heads).toHaveLength(withNames.heads.filter((h) => h.from !== 'name').length);
});

it('finds the same in the machine as one body of triangles', async () => {
  const model = models.get(revisionA)!;
  const one = await measured(inOne(model));
  const lengths = (t: Found['threads']) => t.map(({ exposed_mm }) => exposed_mm.toFixed(0)).sort();
  expect(lengths(one.threads)).toEqual(lengths(found.get(revisionA)!.threads));
  const kinds = (heads: Found['heads']) =>
    heads.map(({ kind, acrossFlats_mm }) => `${kind} ${acrossFlats_mm?.toFixed(1)}`);
  const hexagons = found.get(revisionA)!.heads.filter((h) => h.from === 'cad');
  expect(kinds(one.heads).sort()).toEqual(kinds(hexagons).sort());
});

/** All parts as the triangles of one, in the frame of the model. */
function inOne(model: Model): Model {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const [p, { shape }] of model.parts.entries()) {
    const first = positions.length / 3;
    for (const c of placedPositions(model, p)) positions.push(c);
    for (const v of model.shapes[shape].triangles) triangles.push(first + v);
  }
  const all = {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
    hash: 'all',
  };
  const placement = Float64Array.from([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1]);
  return { ...model, shapes: [all], parts: [{ id: 'all', name: 'all', assembly: [], shape: 0, placement }] };
}

function value(fault: PlantedFault, name: string): number {
  const number = fault.expected.find((n) => n.name === name);
  if (!number) throw new Error(`Fault "${fault.id}" has no number "${name}".`);
  return number.value;
}
