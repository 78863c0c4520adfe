/**
 * A review case as a domain expert writes it: what is drawn, what was measured, the brief, and what a reviewer must
 * and must not say. `README.md` beside this file explains the fields.
 */
import type { AreaClass } from '@coveline/catalogue';
import type { Model, Part, Shape, Vec3 } from '@coveline/model';
import { brief, type PartChange } from '@coveline/project';
import { type Finding, type ReviewResult, review } from '@coveline/review';
import {
  type BlindChannel,
  type Clearance,
  type ClosedHollow,
  type DeadLeg,
  defaultSettings,
  type FastenerHead,
  type FlatFace,
  type InsideCorner,
  type JetNozzle,
  type JetShadow,
  type Joint,
  type NarrowGap,
  type Opening,
  type OpenMember,
  type Place,
  type Pool,
  type ReachMeasure,
  type SkyView,
  type SurveyMeasures,
  type SurveyResult,
  type SurveySettings,
  type Thread,
  type Unreached,
} from '@coveline/survey';

type Box = readonly [Vec3, Vec3];

/** The numbers of a place; `id` is the case's own name for it, `part` or `parts` name parts, `at` may be left out. */
type Measured<P extends Place> = Omit<P, keyof Place> & {
  readonly id: string;
  readonly part?: string;
  readonly parts?: readonly string[];
  readonly at?: Vec3;
};

interface Reached {
  readonly openings?: readonly Measured<Opening>[];
  readonly places: readonly Measured<Unreached>[];
}

export interface Case {
  readonly case: string;
  readonly story: string;
  readonly source: string;
  readonly brief: Record<string, unknown>;
  readonly today?: string;
  readonly parts: readonly (PartChange & {
    readonly name: string;
    readonly box: Box;
    readonly copies?: number;
  })[];
  readonly settings?: Partial<SurveySettings>;
  readonly pools?: readonly Measured<Pool>[];
  readonly faces?: readonly Measured<FlatFace>[];
  readonly corners?: readonly Measured<InsideCorner>[];
  readonly gaps?: readonly Measured<NarrowGap>[];
  readonly joints?: readonly Measured<Joint>[];
  readonly closed?: readonly Measured<ClosedHollow>[];
  readonly blind?: readonly Measured<BlindChannel>[];
  readonly deadLegs?: readonly Measured<DeadLeg>[];
  readonly openMembers?: readonly Measured<OpenMember>[];
  /** Each of these counts as measured only where the case has it. */
  readonly heads?: readonly Measured<FastenerHead>[];
  readonly threads?: readonly Measured<Thread>[];
  readonly hand?: Reached;
  readonly tool?: Reached;
  readonly jets?: { readonly nozzles: readonly JetNozzle[]; readonly places: readonly Measured<JetShadow>[] };
  readonly sky?: readonly Measured<SkyView>[];
  readonly clearances?: readonly Measured<Clearance>[];
  readonly mustAppear: readonly Expectation[];
  readonly mustNotAppear: readonly Expectation[];
  readonly lines?: Record<string, string>;
}

/** Every field that is given has to fit. `why` is for the reader. */
export interface Expectation {
  readonly requirement?: string;
  readonly place?: string;
  readonly part?: string;
  readonly status?: string;
  readonly rank?: number;
  readonly area?: AreaClass;
  readonly says?: string;
  /** One of its numbers by label: value and relative tolerance. */
  readonly number?: readonly [label: string, value: number, tolerance: number];
  readonly why?: string;
}

export function judge(c: Case, profile?: string): ReviewResult {
  const model = modelOf(c);
  const partChanges = Object.fromEntries(
    c.parts.flatMap(({ name, box: _, copies, ...change }) =>
      Object.keys(change).length === 0 ? [] : idsOf(name, copies).map((id) => [id, change]),
    ),
  );
  return review({
    model,
    survey: surveyOf(c),
    brief: brief.parse({ ...c.brief, ...(profile ? { profile } : {}) }),
    partChanges,
    today: c.today ?? '2026-11-25',
  });
}

export function fits(f: Finding, e: Expectation): boolean {
  const n = e.number && f.numbers.find((x) => x.label === e.number![0]);
  return (
    (e.requirement === undefined || f.requirement === e.requirement) &&
    (e.place === undefined || f.places.includes(e.place)) &&
    (e.part === undefined || f.parts.some((id) => id === e.part || id.startsWith(`${e.part}#`))) &&
    (e.status === undefined || f.status === e.status) &&
    (e.rank === undefined || f.consequence.rank === e.rank) &&
    (e.area === undefined || f.areaClass === e.area) &&
    (e.says === undefined ||
      [f.title, f.why, f.demand.limit, f.consequence.reason, ...f.caveats].some((t) =>
        t.includes(e.says!),
      )) &&
    (e.number === undefined ||
      (n !== undefined && Math.abs(n.value - e.number[1]) <= e.number[2] * Math.abs(e.number[1])))
  );
}

const idsOf = (name: string, copies = 1) =>
  Array.from({ length: copies }, (_, i) => (i === 0 ? name : `${name}#${i + 1}`));

/** Parts are boxes; copies stand in a row, 200 mm apart. */
function modelOf(c: Case): Model {
  const shapes: Shape[] = [];
  const parts: Part[] = [];
  for (const { name, box, copies } of c.parts) {
    shapes.push(boxShape(box, name));
    idsOf(name, copies).forEach((id, i) => {
      const placement = Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 200 * i, 0, 0, 1);
      parts.push({ id, name, assembly: [], shape: shapes.length - 1, placement, color: [0.6, 0.6, 0.62] });
    });
  }
  return { shapes, parts, unit: 'mm', deviation_mm: 0, notes: [] };
}

function boxShape([low, high]: Box, name: string): Shape {
  const positions = new Float64Array(24);
  for (let i = 0; i < 8; i++) {
    positions[3 * i] = i & 1 ? high[0] : low[0];
    positions[3 * i + 1] = i & 2 ? high[1] : low[1];
    positions[3 * i + 2] = i & 4 ? high[2] : low[2];
  }
  // Two triangles a side, counter-clockwise from outside.
  const triangles = Uint32Array.from([
    0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7,
    5,
  ]);
  return { positions, triangles, hash: `box of ${name}` };
}

function surveyOf(c: Case): SurveyResult {
  const settings = { ...defaultSettings, ...c.settings };
  const boxes = new Map(
    c.parts.flatMap(({ name, box, copies }) => idsOf(name, copies).map((id) => [id, box] as const)),
  );
  const placed = <P extends Place>(list: readonly Measured<P>[] = []): P[] =>
    list.map(({ part, parts: several, at, ...rest }) => {
      const parts = several ?? [part!];
      const box = boxes.get(parts[0]);
      if (!box) throw new Error(`Case "${c.case}": place "${rest.id}" names no part of the case.`);
      const at_mm = at ?? box[1];
      return {
        ...rest,
        parts,
        at_mm,
        bounds_mm: [at_mm, at_mm],
        deepest_mm: at_mm,
        spill_mm: at_mm,
      } as unknown as P;
    });
  const pools = placed<Pool>(c.pools);
  const faces = placed<FlatFace>(c.faces);
  const corners = placed<InsideCorner>(c.corners);
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  return {
    settings,
    notes: [],
    measures: {
      standingLiquid: { total_mL: sum(pools.map((p) => p.volume_mL)), places: pools },
      flatFaces: { up_cm2: sum(faces.map((f) => f.area_cm2)), down_cm2: 0, places: faces },
      insideCorners: { sharp_mm: sum(corners.map((k) => k.length_mm)), places: corners },
      narrowGaps: { places: placed<NarrowGap>(c.gaps), joints: placed<Joint>(c.joints) },
      hollows: {
        closed: placed<ClosedHollow>(c.closed),
        blind: placed<BlindChannel>(c.blind),
        deadLegs: placed<DeadLeg>(c.deadLegs),
        openMembers: placed<OpenMember>(c.openMembers),
      },
      ...measuredWhereGiven(c, settings, placed),
    },
  };
}

type Placed = <P extends Place>(list: readonly Measured<P>[] | undefined) => P[];

function measuredWhereGiven(c: Case, settings: SurveySettings, placed: Placed): SurveyMeasures {
  const reached = (given: Reached, size_mm: number, length_mm: number, touch_mm: number): ReachMeasure => ({
    size_mm,
    length_mm,
    touch_mm,
    resolution_mm: settings.reachSpacing_mm,
    reached_cm2: 1e4,
    unreached_cm2: given.places.reduce((sum, p) => sum + p.area_cm2, 0),
    openings: placed<Opening>(given.openings),
    places: placed<Unreached>(given.places),
  });
  const { hand_mm, arm_mm, finger_mm, tool_mm, toolLength_mm, bristle_mm } = settings;
  return {
    ...((c.heads || c.threads) && {
      fasteners: { heads: placed<FastenerHead>(c.heads), threads: placed<Thread>(c.threads) },
    }),
    ...(c.hand && { handReach: reached(c.hand, hand_mm, arm_mm, finger_mm) }),
    ...(c.tool && { toolReach: reached(c.tool, tool_mm, toolLength_mm, bristle_mm) }),
    ...(c.jets && {
      jetReach: {
        seen_cm2: c.jets.nozzles.reduce((sum, n) => sum + n.seen_cm2, 0),
        unseen_cm2: c.jets.places.reduce((sum, p) => sum + p.area_cm2, 0),
        beyond_cm2: 0,
        nozzles: c.jets.nozzles,
        places: placed<JetShadow>(c.jets.places),
      },
    }),
    ...(c.sky && { openSky: { places: placed<SkyView>(c.sky) } }),
    ...(c.clearances && { clearances: { floor_mm: 0, places: placed<Clearance>(c.clearances) } }),
  };
}
