import type { Model } from '@coveline/model';
import { measureInsideCorners } from './corners/inside-corners.ts';
import { measureFasteners } from './fasteners/fasteners.ts';
import { measureFlatFaces } from './flat/flat-faces.ts';
import { measureNarrowGaps } from './gaps/narrow-gaps.ts';
import { healthOf } from './health/health.ts';
import { measureHollows } from './hollows/hollows.ts';
import { type AirSpace, airSpaceOf } from './liquid/air-space.ts';
import type { Union } from './liquid/exact/solid.ts';
import { measureSealedLiquid } from './liquid/sealed-liquid.ts';
import { measureStandingLiquid } from './liquid/standing-liquid.ts';
import type { MeasureOutcome } from './outcome.ts';
import type {
  Control,
  Drawing,
  MeasureName,
  SurveyMeasures,
  SurveyOutcome,
  SurveySettings,
} from './result.ts';
import { type Sealed, sealedIn } from './sealed.ts';
import { defaultSettings } from './settings.ts';
import type { Site } from './site.ts';
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

/** Measures that this package computes. */
const offered = [
  'standingLiquid',
  'flatFaces',
  'insideCorners',
  'narrowGaps',
  'hollows',
  'fasteners',
] as const satisfies readonly (MeasureName & keyof SurveyMeasures)[];
type Offered = (typeof offered)[number];

/** As progress tells of them. */
const inWords: Readonly<Record<Offered, string>> = {
  standingLiquid: 'standing liquid',
  flatFaces: 'flat faces',
  insideCorners: 'inside corners',
  narrowGaps: 'narrow gaps',
  hollows: 'hollows',
  fasteners: 'fasteners',
};

/**
 * Computes the asked measures on a model whose +Z points up (see `orient`). Rejects with `SurveyStopped` when the
 * signal is aborted, between two steps.
 */
export async function survey(
  model: Model,
  { settings: asked, measures: names = offered, tilt, tiltRange, site, exact }: SurveyRequest = {},
  control: Control = {},
): Promise<SurveyOutcome> {
  const settings = { ...defaultSettings, ...asked };
  const standing = tilt && !isLevel(tilt) ? tilted(model, tilt) : model;
  let air: AirSpace | undefined;
  const airSpace = (): AirSpace => {
    air ??= airSpaceOf(standing, settings, control);
    return air;
  };
  /** Of the level machine, though the air space may be that of the tilted one. */
  const sealedOnLevel = (): Sealed => {
    const sealed = sealedIn(airSpace());
    if (!tilt) return sealed;
    const tip = turnOf(tilt);
    return (x, y, z, dx, dy, dz) => sealed(...tip([x, y, z]), ...tip([dx, dy, dz]));
  };
  const union = exact && names.includes('standingLiquid') ? await exact() : undefined;
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
      const found = measureFlatFaces(standing, settings, control, sealedIn(airSpace()));
      return tilt ? levelFaces(found, tilt) : found;
    },
    insideCorners: () => measureInsideCorners(model, settings, control, sealedOnLevel()),
    fasteners: () => measureFasteners(model, settings, control),
    narrowGaps: () => measureNarrowGaps(model, settings, control, sealedOnLevel()),
    hollows: () => {
      const found = measureHollows(standing, settings, control, airSpace(), site);
      return tilt ? levelHollows(found, tilt) : found;
    },
  };

  const health = healthOf(model, control);
  const measures: SurveyMeasures = {};
  const fields: Partial<Record<MeasureName, Float32Array>> = {};
  const drawings = new Map<string, Drawing>();
  const notes = new Set(model.notes.filter(({ level }) => level === 'warning').map(({ text }) => text));
  for (const name of offered) {
    if (!names.includes(name)) continue;
    step(control, inWords[name], 0);
    const outcome = compute[name]();
    Object.assign(measures, { [name]: outcome.measure });
    fields[name] = outcome.field;
    for (const [id, drawing] of outcome.drawings) drawings.set(id, drawing);
    for (const note of outcome.notes) notes.add(note);
    control.onMeasure?.({ result: { settings, health, notes: [...notes], measures }, fields, drawings });
  }
  for (const name of names) {
    if (!(offered as readonly string[]).includes(name)) notes.add(`The measure ${name} is not computed yet.`);
  }
  return { result: { settings, health, notes: [...notes], measures }, fields, drawings };
}
