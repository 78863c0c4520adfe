/** Everything that a rule looks at. */
import {
  type AreaClass,
  builtIn,
  type Catalogue,
  type Demand,
  demandsInForce,
  type Limit,
  limitsFor,
  type MeasureKey,
} from '@coveline/catalogue';
import type { Answer, Brief, PartData, SurfaceGroup } from '@coveline/project';
import type { OpenMember, SurveyResult } from '@coveline/survey';
import { type Known, knowledgeOf } from './parts/known.ts';
import { openMembersOf } from './parts/open-members.ts';
import { proposeFor, withChanges } from './parts/propose.ts';
import type { ReviewRequest } from './request.ts';

export interface Scene {
  readonly known: Known;
  readonly survey: SurveyResult;
  readonly brief: Brief;
  readonly parts: readonly PartData[];
  readonly catalogue: Catalogue;
  readonly demands: ReadonlyMap<string, Demand>;
  readonly answers: Readonly<Record<string, Answer>>;
  readonly groups: Readonly<Record<string, Omit<SurfaceGroup, 'id'>>>;
  /** Open hollow members that carry something, by part index. Empty when hollows were not surveyed. */
  readonly openMembers: ReadonlyMap<number, OpenMember>;
  /** Only dry cleaning by the brief: no water reaches the machine. */
  readonly dryOnly: boolean;
}

export function sceneOf(request: ReviewRequest): Scene {
  const { model, survey, brief, partChanges, today } = request;
  const catalogue = request.catalogue ?? builtIn;
  const known = knowledgeOf(model);
  const demands = demandsInForce(
    { profile: brief.profile, careLevel: brief.careLevel, on: today },
    catalogue,
  );
  return {
    known,
    survey,
    brief,
    parts: withChanges(proposeFor(known, survey, catalogue), partChanges),
    catalogue,
    demands: new Map(demands.map((d) => [d.id, d])),
    answers: request.answers ?? {},
    groups: request.groups ?? {},
    openMembers: openMembersOf(known, survey),
    dryOnly: brief.cleaning.ways.length > 0 && brief.cleaning.ways.every((w) => w === 'dry'),
  };
}

/** The first of several requirements that is in force and asks something of this area. */
export function firstInForce(
  scene: Scene,
  ids: readonly (string | undefined)[],
  area: AreaClass,
): Demand | null {
  for (const id of ids) {
    const demand = id === undefined ? undefined : scene.demands.get(id);
    if (demand?.areas.includes(area)) return demand;
  }
  return null;
}

/** The one limit of a demand on a quantity in an area; null where the profile has none. */
export function limitOf(demand: Demand, quantity: string, area: AreaClass, angle_deg?: number): Limit | null {
  return limitsFor(demand, quantity, area, angle_deg)[0] ?? null;
}

const bySeverity: readonly AreaClass[] = ['food', 'splash', 'nonFood'];

/** The area whose demands are the strictest among some parts. */
export function strictestArea(scene: Scene, parts: readonly number[]): AreaClass {
  return bySeverity.find((area) => parts.some((p) => scene.parts[p].areaClass === area)) ?? 'splash';
}

/**
 * The area between parts that face or touch each other: that of the part whose demands are the least strict, because
 * only what two food-area parts enclose is in the way of product. The seat of a bracket on a hopper is outside.
 */
export function areaBetween(scene: Scene, parts: readonly number[]): AreaClass {
  const areas = parts.map((p) => scene.parts[p].areaClass);
  return [...bySeverity].reverse().find((area) => areas.includes(area)) ?? 'splash';
}

/** Indices of the parts of a place; ids that the model does not have are left out. */
export function partsAt(scene: Scene, place: { readonly parts: readonly string[] }): readonly number[] {
  return place.parts.map((id) => scene.known.indexOf.get(id)).filter((p) => p !== undefined);
}

export function elementOf(scene: Scene, part: number): string | undefined {
  return scene.known.is[part]?.element;
}

export function isFastener(scene: Scene, part: number): boolean {
  const is = scene.known.is[part];
  return is?.noun === 'fastener' && is.from === 'name';
}

/**
 * Parts of one shape in one area are alike: what holds for one holds for all, and is said once.
 */
export function twinKey(scene: Scene, part: number): string {
  const { shape } = scene.known.model.parts[part];
  return `${scene.known.model.shapes[shape].hash}|${scene.parts[part].areaClass}|${elementOf(scene, part) ?? ''}`;
}

/** The first id among some parts in alphabetical order: a name for a group that does not change with the shape. */
export function firstId(scene: Scene, parts: readonly number[]): string {
  return parts.map((p) => scene.parts[p].partId).sort()[0];
}

export function isComputed(scene: Scene, measure: MeasureKey): boolean {
  return measure === 'overhead' || measure === 'clearances' || measure in scene.survey.measures;
}
