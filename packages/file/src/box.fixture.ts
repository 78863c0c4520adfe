/** A plate with an upturned lip on four sides, made of boxes: small, closed, and drawn by hand for the tests. */
import type { Model, Part, Shape, Vec3 } from '@coveline/model';
import type { Project } from '@coveline/project';
import { project } from '@coveline/project';
import type { Working } from '@coveline/quantity';
import type { Finding, ReviewResult } from '@coveline/review';
import { defaultSettings, type SurveyOutcome } from '@coveline/survey';

export function boxShape([x, y, z]: Vec3): Shape {
  const positions = new Float64Array(24);
  for (let i = 0; i < 8; i++) {
    positions[i * 3] = i & 1 ? x : 0;
    positions[i * 3 + 1] = i & 2 ? y : 0;
    positions[i * 3 + 2] = i & 4 ? z : 0;
  }
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const triangles = new Uint32Array(quads.flatMap(([a, b, c, d]) => [a, b, c, a, c, d]));
  return { positions, triangles, hash: `box ${x} ${y} ${z}` };
}

function part(name: string, shape: number, at: Vec3): Part {
  const placement = new Float64Array([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, ...at, 1]);
  return { id: `machine/${name}`, name, assembly: ['machine'], shape, placement, color: [0.75, 0.8, 0.85] };
}

export function trayModel(): Model {
  return {
    shapes: [boxShape([200, 120, 4]), boxShape([200, 4, 30]), boxShape([4, 112, 30])],
    parts: [
      part('plate', 0, [0, 0, 100]),
      part('lip front', 1, [0, 0, 104]),
      part('lip rear', 1, [0, 116, 104]),
      part('lip left', 2, [0, 4, 104]),
      part('lip right', 2, [196, 4, 104]),
    ],
    unit: 'mm',
    deviation_mm: 0,
    notes: [],
  };
}

const bounds: readonly [Vec3, Vec3] = [
  [4, 4, 104],
  [196, 116, 134],
];

/** One pool in the tray, filled to the lip, with its surface as two triangles. */
export function trayOutcome(): SurveyOutcome {
  const [[x0, y0], [x1, y1, z]] = bounds;
  const pool = {
    id: 'pool-1',
    parts: ['machine/plate'],
    at_mm: [100, 60, 134] as Vec3,
    bounds_mm: bounds,
    volume_mL: 645.12,
    depth_mm: 30,
    area_cm2: 215.04,
    deepest_mm: [100, 60, 104] as Vec3,
    spill_mm: [4, 60, 134] as Vec3,
  };
  return {
    result: {
      settings: defaultSettings,
      notes: ['A note of the survey.'],
      measures: { standingLiquid: { total_mL: 645.12, places: [pool] } },
    },
    fields: {},
    drawings: new Map([
      [
        'pool-1',
        { triangles: new Float32Array([x0, y0, z, x1, y0, z, x1, y1, z, x0, y0, z, x1, y1, z, x0, y1, z]) },
      ],
    ]),
  };
}

const working: Working = {
  title: 'Volume that stays',
  inputs: [{ symbol: 'V', name: 'volume', value: 645.12, unit: 'mL', from: 'measured on the model' }],
  formula: ['V = A × h'],
  steps: [{ symbol: 'h', name: 'depth', value: 30, unit: 'mm' }],
  result: { symbol: 'V', name: 'volume', value: 645.12, unit: 'mL' },
  source: 'geometry',
  validity: 'any vessel with upright walls',
  warnings: [],
};

export function poolFinding(change: Partial<Finding> = {}): Finding {
  return {
    id: 'finding-1',
    requirement: 'no-such-requirement',
    status: 'notMet',
    measure: 'standingLiquid',
    places: ['pool-1'],
    parts: ['machine/plate'],
    at_mm: [100, 60, 104],
    bounds_mm: bounds,
    height_mm: 104,
    areaClass: 'food',
    title: 'The plate keeps 645 mL after draining',
    numbers: [{ label: 'Stays', value: 645.12, unit: 'mL', working }],
    why: 'Rinse water stays.',
    demand: {
      text: 'Liquid leaves the surface.',
      kind: 'standard',
      citations: [{ source: 'a source that the catalogue lacks', clause: '5.3', standing: 'fromMemory' }],
      limit: 'volume at most 1 mL',
    },
    remedies: [{ text: 'Drill a hole.', cost: 'low' }],
    consequence: { rank: 1, weight: 645, weightLabel: 'mL', reason: 'It stands above open product.' },
    caveats: ['The area class is a proposal.'],
    ...change,
  };
}

export function reviewOf(findings: readonly Finding[]): ReviewResult {
  return {
    schema: 'coveline.review/1',
    findings,
    requirements: [
      {
        requirement: 'no-such-requirement',
        status: 'notMet',
        basis: 'computed',
        findings: findings.map((f) => f.id),
      },
    ],
    parts: [],
    round: { stops: [], items: 0, answered: 0 },
    cleaning: { groups: [], resources: null, uncleaned: [] },
    proof: { points: [], validation: null, stages: [] },
    notes: [],
  };
}

export function trayProject(name = 'Tray (invented)'): Project {
  return project.parse({
    schema: 'coveline.project/1',
    name,
    invented: true,
    revisions: [{ id: 'A', label: 'Revision A', file: 'tray.step' }],
  });
}
