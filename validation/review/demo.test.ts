/**
 * The demo machine from its drawn parameters to the review: every fault that was planted is told, and what only looks
 * like one is not. Invented; the answer sheet is computed from the parameters of the machine.
 */
import { readModel } from '@coveline/cad';
import type { Model } from '@coveline/model';
import {
  demoProject,
  expectedChanges,
  machine,
  type Parameters,
  type PlantedFault,
  plantedFaults,
  revisionA,
  revisionB,
  startKernel,
  stepFileName,
  writeStep,
} from '@coveline/porridge-doser';
import { siteOf } from '@coveline/project';
import { compareRevisions, proposeSite, type ReviewResult, review } from '@coveline/review';
import { type SurveyResult, survey } from '@coveline/survey';
import { beforeAll, describe, expect, test } from 'vitest';

interface Reviewed {
  readonly model: Model;
  readonly survey: SurveyResult;
  readonly result: ReviewResult;
}
const reviewed = new Map<Parameters, Reviewed>();

beforeAll(async () => {
  await startKernel();
  const drawn = [revisionA, revisionB].map((parameters) => ({ parameters, root: machine(parameters) }));
  const project = demoProject(drawn);
  for (const { parameters: p, root } of drawn) {
    const step = new TextEncoder().encode(writeStep(root, stepFileName(p)));
    const model = await readModel(step, stepFileName(p));
    const site = siteOf({}, proposeSite(model).proposals);
    const { result: surveyed } = await survey(model, { site });
    const partChanges = project.parts[p.revision] ?? {};
    const result = review({
      model,
      survey: surveyed,
      brief: project.brief,
      partChanges,
      today: '2026-11-25',
    });
    reviewed.set(p, { model, survey: surveyed, result });
  }
}, 400_000);

/** What a review says of each kind: a finding under one of these requirements … */
const finding: Partial<Record<PlantedFault['kind'], readonly string[]>> = {
  standingLiquid: ['gen-drain', 'tray-drain', 'noz-volume', 'hood-drain'],
  deadLeg: ['pipe-dead'],
  levelFace: ['gen-slope', 'frame-horizontal', 'box-roof', 'tray-slope'],
  cables: ['cable-open'],
  narrowGap: ['joint-gap-splash', 'joint-flush', 'joint-lap', 'gen-ingress'],
  closedHollow: ['hollow-sealed'],
  openHollow: ['hollow-open'],
  sharpCorner: ['gen-radius-food', 'gen-radius-splash'],
  smallRadius: ['gen-radius-food'],
  lowLegs: ['feet-bench-height'],
  overhead: ['hood-first', 'hood-light', 'frame-overhead'],
  blindHole: ['hollow-blind', 'gen-drain'],
};
/** … or, where geometry does not settle it yet, a line that says what to look at. */
const line: Partial<Record<PlantedFault['kind'], string>> = {
  exposedThread: 'fast-protrude',
  controls: 'control-stop',
  hinge: 'door-hinge',
};

describe.each([revisionA, revisionB])('revision $revision', (p) => {
  test('every planted fault is told', () => {
    const { result } = reviewed.get(p)!;
    const silent: string[] = [];
    for (const fault of plantedFaults(p)) {
      const ids = finding[fault.kind];
      const isTold = ids
        ? result.findings.some(
            (f) =>
              ids.includes(f.requirement) && fault.parts.some((n) => f.parts.some((id) => isNamed(id, n))),
          )
        : result.requirements.some(
            (r) => r.requirement === line[fault.kind] && r.status !== 'met' && r.status !== 'noSuchElement',
          );
      if (!isTold && !isAskedOtherwise(fault)) silent.push(`${fault.id}: ${fault.what}`);
    }
    expect(silent).toEqual([]);
  });
});

/** Numbers of the answer sheet that a finding carries, with the tolerance of the way it is found. */
const sameNumber: readonly (readonly [
  fault: string,
  expected: string,
  label: string,
  factor: number,
  tolerance: number,
])[] = [
  [
    'capped-branch',
    'L/D from the wall of the main',
    'From the wall of the main, over the bore of the branch',
    1,
    0.005,
  ],
  [
    'capped-branch',
    'L/D from the axis of the main',
    'From the axis of the main, over the bore of the branch',
    1,
    0.005,
  ],
  ['bar-over-jars', 'part of a mouth hidden from straight above', 'Share of the mouth below it', 100, 0.02],
  ['bar-over-jars', 'height above the mouths', 'Height above the mouth', 1, 0.001],
  ['low-legs', 'clearance', 'Clearance', 1, 0.001],
  ['dished-jar-plate', 'volume', 'Stays after draining', 1, 0.01],
  ['raised-drain-collar', 'depth', 'Depth', 1, 0.01],
  ['level-shelf', 'area', 'Area', 1, 0.01],
];

test('findings carry the numbers of the answer sheet', () => {
  const { result } = reviewed.get(revisionA)!;
  for (const [id, expected, label, factor, tolerance] of sameNumber) {
    const fault = plantedFaults(revisionA).find((f) => f.id === id)!;
    const value = fault.expected.find((e) => e.name === expected)!.value * factor;
    const told = result.findings
      .filter((f) => fault.parts.some((n) => f.parts.some((part) => isNamed(part, n))))
      .flatMap((f) => f.numbers.filter((n) => n.label === label).map((n) => n.value));
    const near = told.some((t) => Math.abs(t - value) <= tolerance * value);
    expect(near, `${id}, ${expected}: ${value} expected, told ${told.join(', ')}`).toBe(true);
  }
});

/** A cabinet is hollow by its nature: its inside is asked by degree of protection, not as a closed hollow. */
const isAskedOtherwise = (fault: PlantedFault) => fault.id === 'cabinet-air';

const isNamed = (id: string, name: string) => id.split('/').at(-1)!.replace(/#\d+$/, '') === name;

describe.each([revisionA, revisionB])('what only looks like a fault in revision $revision', (p) => {
  test('draws no finding of its kind', () => {
    const { result, survey: surveyed } = reviewed.get(p)!;
    const told = (name: string, measures: readonly string[]) =>
      result.findings
        .filter((f) => measures.includes(f.measure!) && isNamed(f.parts[0], name))
        .map((f) => f.title);
    expect(told('jar 0.35 L glass', ['standingLiquid', 'hollows', 'flatFaces', 'insideCorners'])).toEqual([]);
    expect(told('deck sheet 3 mm 1.4301', ['flatFaces', 'standingLiquid'])).toEqual([]);
    for (const round of [
      'skid bar round Ø12 1.4404',
      'guide bar round Ø10 1.4301',
      'cross bar round Ø12 1.4301',
    ])
      expect(told(round, ['flatFaces', 'standingLiquid'])).toEqual([]);
    expect(told('emergency stop Ø40 red PA66', ['standingLiquid', 'overhead', 'narrowGaps'])).toEqual([]);
    expect(
      surveyed.measures.standingLiquid!.places.some((pool) =>
        pool.parts.some((id) => isNamed(id, 'jar 0.35 L glass')),
      ),
    ).toBe(true);
  });

  test('comes to a number of findings that a person can work through, the gravest first', () => {
    const { result } = reviewed.get(p)!;
    expect(result.findings.length).toBeGreaterThan(20);
    expect(result.findings.length).toBeLessThan(80);
    const ranks = result.findings.map((f) => f.consequence.rank);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(result.findings.slice(0, 3).every((f) => f.areaClass === 'food')).toBe(true);
  });
});

test('the second revision mends what it was drawn to mend, and the new pool is told', () => {
  const a = reviewed.get(revisionA)!;
  const b = reviewed.get(revisionB)!;
  const changes = compareRevisions(a, b);
  const of = (fault: PlantedFault) =>
    changes.filter(
      (c) => c.measure === 'standingLiquid' && fault.parts.some((n) => c.parts.some((id) => isNamed(id, n))),
    );
  const planted = [...plantedFaults(revisionA), ...plantedFaults(revisionB)];
  const liquid = expectedChanges()
    .map((e) => ({ ...e, fault: planted.find((f) => f.id === e.fault)! }))
    .filter((e) => e.fault.kind === 'standingLiquid');
  expect(liquid.map((e) => e.change).sort()).toEqual(['mended', 'new', 'stays']);
  for (const { fault, change } of liquid) {
    const found = of(fault).map((c) => c.change);
    if (change === 'stays')
      expect(
        found.some((c) => c !== 'mended' && c !== 'new'),
        fault.id,
      ).toBe(true);
    else expect(found, fault.id).toContain(change);
  }
});
