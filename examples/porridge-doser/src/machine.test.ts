import { beforeAll, describe, expect, it } from 'vitest';
import { expectedChanges, type PlantedFault, plantedFaults } from './faults.ts';
import { startKernel } from './kernel.ts';
import { machine } from './machine.ts';
import { branch, type Parameters, revisionA, revisionB } from './parameters.ts';
import { demoProject, stepFileName } from './project.ts';
import { writeStep } from './step.ts';
import { productPipe } from './stock/pipes.ts';
import { type Assembly, type PlacedBody, placedBodies } from './tree.ts';

const made = new Map<Parameters, { root: Assembly; bodies: PlacedBody[]; faults: PlantedFault[] }>();

beforeAll(async () => {
  await startKernel();
  for (const p of [revisionA, revisionB]) {
    const root = machine(p);
    made.set(p, { root, bodies: placedBodies(root), faults: plantedFaults(p) });
  }
}, 120_000);

describe.each([revisionA, revisionB])('revision $revision', (p) => {
  it('has at least sixty parts with ids of their own', () => {
    const { bodies } = made.get(p)!;
    expect(bodies.length).toBeGreaterThanOrEqual(60);
    expect(new Set(bodies.map((b) => b.id)).size).toBe(bodies.length);
  });

  it('uses one shape for every name, so that repeated parts are instances', () => {
    const { bodies } = made.get(p)!;
    const byName = new Map(bodies.map((b) => [b.name, b.body]));
    for (const b of bodies) expect(byName.get(b.name)).toBe(b.body);
    expect(bodies.filter((b) => b.name === 'jar 0.35 L glass')).toHaveLength(6);
    expect(bodies.filter((b) => b.name === 'levelling stud M16x60 A2')).toHaveLength(4);
  });

  it('draws every part that a fault speaks of', () => {
    const { bodies, faults } = made.get(p)!;
    const names = new Set(bodies.map((b) => b.name));
    for (const fault of faults)
      for (const part of fault.parts) expect(names, `${fault.id}: ${part}`).toContain(part);
    expect(new Set(faults.map((f) => f.id)).size).toBe(faults.length);
  });

  it('writes the same file every time, in plain ASCII, with every shape once', () => {
    const { root, bodies } = made.get(p)!;
    const step = writeStep(root, stepFileName(p));
    expect(writeStep(root, stepFileName(p))).toBe(step);
    expect(step).toMatch(/^[\n\r -~]*$/);
    expect(step.match(/(MANIFOLD_SOLID_BREP|BREP_WITH_VOIDS)\(/g)).toHaveLength(
      new Set(bodies.map((b) => b.body)).size,
    );
  });
});

describe('planted numbers', () => {
  it('the dished plate keeps about 38 mL', () => {
    expect(value(revisionA, 'dished-jar-plate', 'volume')).toBeCloseTo(38, 0);
  });

  it('the bar hides about 70 % of a mouth below it', () => {
    expect(value(revisionA, 'bar-over-jars', 'part of a mouth hidden from straight above')).toBeCloseTo(
      0.7,
      1,
    );
  });

  it('says what revision B mends and what is new', () => {
    const of = (change: string) =>
      expectedChanges()
        .filter((c) => c.change === change)
        .map((c) => c.fault)
        .sort();
    expect(of('mended')).toEqual(
      ['dished-jar-plate', 'hopper-corner-radius', 'lap-bolts', 'lapped-back-wall', 'low-legs'].sort(),
    );
    expect(of('new')).toEqual(['upturned-sensor-channel']);
    expect(of('stays').length).toBeGreaterThanOrEqual(15);
  });
});

describe('project', () => {
  it('is invented, complete, and leaves every decision to the user', () => {
    const project = drawnProject();
    expect(project.invented).toBe(true);
    expect(project.revisions.map((r) => r.id)).toEqual(['A', 'B']);
    expect(project.decisions).toEqual({});
    expect(project.brief.products[0].allergens).toContain('milk');
  });

  it('speaks only of parts that exist', () => {
    const { parts } = drawnProject();
    for (const p of [revisionA, revisionB]) {
      const ids = new Set(made.get(p)!.bodies.map((b) => b.id));
      for (const id of Object.keys(parts[p.revision])) expect(ids).toContain(id);
    }
    expect(Object.keys(parts.A)).toHaveLength(4);
    expect(Object.keys(parts.B)).toHaveLength(5);
  });

  it('keeps calculations that agree with what was planted', () => {
    const { calculations } = drawnProject();
    const gave = (id: string) => calculations.find((c) => c.id === id)?.gave?.value;
    // Faults: the capped branch has L/D 2.5 from the wall of the main.
    expect(gave('sampling-branch')).toBeCloseTo(branch.reach / productPipe.inside, 9);
    expect(gave('sampling-branch')).toBeCloseTo(2.5, 9);
    expect(calculations).toHaveLength(6);
    for (const { note } of calculations) expect(note).not.toBe('');
  });
});

function drawnProject() {
  return demoProject([...made].map(([parameters, { root }]) => ({ parameters, root })));
}

function value(p: Parameters, fault: string, name: string): number {
  const found = made
    .get(p)!
    .faults.find((f) => f.id === fault)
    ?.expected.find((n) => n.name === name);
  if (!found) throw new Error(`No number "${name}" at fault "${fault}".`);
  return found.value;
}
