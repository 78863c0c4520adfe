import type { Model, Vec3 } from '@coveline/model';
import { measureClearances } from './clearances/clearances.ts';
import { measureInsideCorners } from './corners/inside-corners.ts';
import { measureFasteners } from './fasteners/fasteners.ts';
import { measureFlatFaces } from './flat/flat-faces.ts';
import { measureNarrowGaps } from './gaps/narrow-gaps.ts';
import { healthOf } from './health/health.ts';
import { measureHollows } from './hollows/hollows.ts';
import { cutOffFrom } from './jets/air.ts';
import { measureJetReach } from './jets/jet-reach.ts';
import { type AirSpace, airSpaceOf } from './liquid/air-space.ts';
import type { Union } from './liquid/exact/solid.ts';
import { measureSealedLiquid } from './liquid/sealed-liquid.ts';
import { measureStandingLiquid } from './liquid/standing-liquid.ts';
import type { MeasureOutcome } from './outcome.ts';
import { outcomeOf } from './outcome-of.ts';
import { measureOverhead } from './overhead/overhead.ts';
import { handOf, toolOf } from './reach/limb.ts';
import { measureReach, type Reach, reachOf } from './reach/reach.ts';
import type { Control, MeasureName, SurveyMeasures, SurveyOutcome, SurveySettings } from './result.ts';
import { nothingSealed, type Sealed, type SealedAir, sealedAirOf, sealedIn } from './sealed.ts';
import { defaultSettings } from './settings.ts';
import { emptySite, type Site } from './site.ts';
import { measureOpenSky } from './sky/open-sky.ts';
import { step } from './stopped.ts';
import { isLevel, type Tilt, tilted, turnOf } from './tilt.ts';
import { levelFaces, levelHollows, levelPools } from './tilt-back.ts';
import { liquidOverTilts, type TiltRequest } from './tilt-range.ts';

export interface SurveyRequest {
  readonly settings?: Partial<SurveySettings>;
  /** All when absent. */
  readonly measures?: readonly MeasureName[];
  /** Liquid and flat faces are surveyed with the machine tilted; coordinates are told on the level machine. */
  readonly tilt?: Tilt;
  /** Standing liquid is also looked at over tilts about the way the machine stands. */
  readonly tiltRange?: Omit<TiltRequest, 'union'>;
  /** Access sides, mouths, nozzles, filters …; what is absent is noted by the measures that need it. */
  readonly site?: Site;
  /**
   * Loads a union of solids (`loadManifoldUnion`): the largest pools are then measured a second time, exactly. Called
   * only when standing liquid is asked for.
   */
  readonly exact?: () => Promise<Union>;
}

/** Measures that this package computes, in the order of the outcome. */
export const offered = [
  'standingLiquid',
  'flatFaces',
  'insideCorners',
  'narrowGaps',
  'hollows',
  'fasteners',
  'handReach',
  'toolReach',
  'jetReach',
  'openSky',
  'overhead',
  'clearances',
] as const satisfies readonly (MeasureName & keyof SurveyMeasures)[];
export type Offered = (typeof offered)[number];

/** As progress tells of them. */
const inWords: Readonly<Record<Offered, string>> = {
  standingLiquid: 'standing liquid',
  flatFaces: 'flat faces',
  insideCorners: 'inside corners',
  narrowGaps: 'narrow gaps',
  hollows: 'hollows',
  fasteners: 'fasteners',
  handReach: 'hand reach',
  toolReach: 'tool reach',
  jetReach: 'jet reach',
  openSky: 'first air',
  overhead: 'what hangs overhead',
  clearances: 'clearances',
};

/** Work that several measures share; where several threads work, one of them does it and all these measures. */
export type SharedWork = 'air' | 'reach';
export const sharedWork: Partial<Readonly<Record<MeasureName, SharedWork>>> = {
  standingLiquid: 'air',
  hollows: 'air',
  jetReach: 'air',
  handReach: 'reach',
  toolReach: 'reach',
};

/** Measures that ask what is sealed off: they wait for the air space where several threads work. */
export const onSealedAir: ReadonlySet<MeasureName> = new Set<MeasureName>([
  'flatFaces',
  'insideCorners',
  'narrowGaps',
  'handReach',
  'toolReach',
]);

/** What the measures of one model share, filled when it is first needed. One object for a model and a request. */
export interface Prepared {
  /** The model as it stands when it is tilted. */
  standing?: Model;
  air?: AirSpace;
  sealed?: Sealed;
  /** Ways of balls of all sizes, of the level machine: for hand and tool. */
  reach?: Reach;
}

/**
 * Computes the asked measures on a model whose +Z points up (see `orient`). Rejects with `SurveyStopped` when the
 * signal is aborted, between two steps.
 */
export async function survey(
  model: Model,
  request: SurveyRequest = {},
  control: Control = {},
): Promise<SurveyOutcome> {
  const settings = { ...defaultSettings, ...request.settings };
  const names = request.measures ?? offered;
  const health = healthOf(model, control);
  const prepared: Prepared = {};
  const finished = new Map<MeasureName, MeasureOutcome<Offered>>();
  for (const name of offered) {
    if (!names.includes(name)) continue;
    finished.set(name, await measureOne(name, model, request, prepared, control));
    control.onMeasure?.(outcomeOf(model, settings, health, offered, finished));
  }
  return outcomeOf(model, settings, health, offered, finished, names);
}

/** What of the air space of the model, as it stands, is sealed off. Computes the air space unless it is prepared. */
export function prepareSealed(
  model: Model,
  request: SurveyRequest,
  prepared: Prepared,
  control: Control,
): SealedAir {
  const settings = { ...defaultSettings, ...request.settings };
  prepared.standing ??= asItStands(model, request);
  prepared.air ??= airSpaceOf(prepared.standing, settings, control);
  return sealedAirOf(prepared.air);
}

function asItStands(model: Model, { tilt }: SurveyRequest): Model {
  return tilt && !isLevel(tilt) ? tilted(model, tilt) : model;
}

/** One measure of `survey`. */
export async function measureOne(
  name: Offered,
  model: Model,
  request: SurveyRequest,
  prepared: Prepared,
  control: Control,
): Promise<MeasureOutcome<Offered>> {
  const { settings: asked, tilt, tiltRange, site, exact } = request;
  const settings = { ...defaultSettings, ...asked };
  prepared.standing ??= asItStands(model, request);
  const { standing } = prepared;
  const airSpace = (): AirSpace => {
    prepared.air ??= airSpaceOf(standing, settings, control);
    return prepared.air;
  };
  const sealedOff = (): Sealed => {
    prepared.sealed ??= sealedIn(airSpace());
    return prepared.sealed;
  };
  /** Of the level machine, though the air space may be that of the tilted one. */
  const sealedOnLevel = (): Sealed => {
    const sealed = sealedOff();
    if (!tilt) return sealed;
    const tip = turnOf(tilt);
    return (x, y, z, dx, dy, dz) => sealed(...tip([x, y, z]), ...tip([dx, dy, dz]));
  };
  /** The air in which no nozzle stands, of the level machine. */
  const noJetAir = ({ nozzles }: Site): Sealed => {
    if (nozzles.length === 0) return nothingSealed;
    const tip = tilt ? turnOf(tilt) : (p: Vec3): Vec3 => p;
    const cutOff = cutOffFrom(
      airSpace(),
      nozzles.map(({ at_mm }) => tip(at_mm)),
    );
    return (x, y, z, dx, dy, dz) => cutOff(...tip([x, y, z]), ...tip([dx, dy, dz]));
  };
  const reach = (): Reach => {
    prepared.reach ??= reachOf(model, settings, control, site);
    return prepared.reach;
  };
  const union = exact && name === 'standingLiquid' ? await exact() : undefined;
  const compute: { readonly [M in Offered]: () => MeasureOutcome<M> } = {
    standingLiquid: () => {
      const measure = settings.sealedBelow_mm > 0 ? measureSealedLiquid : measureStandingLiquid;
      const found = measure(standing, settings, control, airSpace(), union);
      const here = tilt ? levelPools(found, tilt) : found;
      if (!tiltRange) return here;
      const tilts = liquidOverTilts(standing, settings, { ...tiltRange, ...(union && { union }) }, control);
      return { ...here, measure: { ...here.measure, tilts } };
    },
    flatFaces: () => {
      const found = measureFlatFaces(standing, settings, control, sealedOff());
      return tilt ? levelFaces(found, tilt) : found;
    },
    insideCorners: () => measureInsideCorners(model, settings, control, sealedOnLevel()),
    fasteners: () => measureFasteners(model, settings, control),
    handReach: () => measureReach(reach(), handOf(settings), settings, control, sealedOnLevel()),
    toolReach: () => measureReach(reach(), toolOf(settings), settings, control, sealedOnLevel()),
    jetReach: () => {
      const around = site ?? emptySite;
      return measureJetReach(model, settings, around, control, noJetAir(around));
    },
    openSky: () => measureOpenSky(model, settings, site ?? emptySite, control),
    overhead: () => measureOverhead(model, settings, site ?? emptySite, control),
    clearances: () => measureClearances(model, settings, site ?? emptySite, control),
    narrowGaps: () => measureNarrowGaps(model, settings, control, sealedOnLevel()),
    hollows: () => {
      const found = measureHollows(standing, settings, control, airSpace(), site);
      return tilt ? levelHollows(found, tilt) : found;
    },
  };

  step(control, inWords[name], 0);
  return compute[name]();
}
