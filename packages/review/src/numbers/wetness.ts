/** How long liquid stays and what can grow in it, by the calculations of the engineering package. */
import { dryingTime, growthInResidue, retainedVolume } from '@coveline/engineering';
import type { Brief } from '@coveline/project';
import type { FindingNumber } from '../types.ts';

export interface Wetness {
  readonly numbers: readonly FindingNumber[];
  /** Two or three sentences: how long, and what follows. */
  readonly why: string;
  readonly caveats: readonly string[];
}

/** Air in a room without draught. Common practice; the slower the air, the longer it stays wet. */
const airSpeed_ms = 0.1;

/** `depth_mm` of standing liquid over a wet patch of `area_cm2`: when it is dry, and what can grow until then. */
export function wetness(brief: Brief, depth_mm: number, area_cm2: number): Wetness {
  const dry = drying(brief, depth_mm, area_cm2);
  const growth = growthUntil(brief, Math.min(dry.dries_h, brief.cleaning.interval_h));
  return {
    numbers: [...dry.numbers, ...growth.numbers],
    why: `${dry.why} ${growth.why}`.trim(),
    caveats: [...dry.caveats, ...growth.caveats],
  };
}

export interface Drying extends Wetness {
  /** Infinity when it does not dry by itself. */
  readonly dries_h: number;
}

export function drying(brief: Brief, depth_mm: number, area_cm2: number): Drying {
  const { room_degC, relativeHumidity_percent } = brief.environment;
  const dry = dryingTime.run(
    {
      depth_mm,
      room_degC,
      relativeHumidity_pct: relativeHumidity_percent,
      airSpeed: airSpeed_ms,
      length_mm: Math.min(5000, Math.max(5, Math.sqrt(area_cm2 * 100))),
    },
    {
      depth_mm: 'measured on the model',
      room_degC: 'brief',
      relativeHumidity_pct: 'brief',
      airSpeed: 'no draught, common practice',
      length_mm: 'root of the wet area',
    },
  );
  if (dry.kind === 'refused') {
    const why = driesInWords(Infinity, brief.cleaning.interval_h);
    return { dries_h: Infinity, numbers: [], why, caveats: [`No drying time: ${dry.reason}.`] };
  }
  const dries_h = dry.values.time_h;
  return {
    dries_h,
    numbers: [{ label: 'Dry after', value: dries_h, unit: 'h', working: dry.working }],
    why: driesInWords(dries_h, brief.cleaning.interval_h),
    caveats: [],
  };
}

function growthUntil(brief: Brief, wet_h: number): Wetness {
  const growing = supportsGrowth(brief);
  if (!growing.yes) return { numbers: [], why: growing.because, caveats: [] };
  const growth = growthInResidue.run(
    { temperature_degC: brief.environment.room_degC, time_h: wet_h },
    { temperature_degC: 'room, by the brief', time_h: 'until dry or until the next cleaning' },
  );
  if (growth.kind === 'refused')
    return { numbers: [], why: '', caveats: [`No growth figure: ${growth.reason}.`] };
  const { growth_log10 } = growth.values;
  const why =
    growth_log10 >= 0.3
      ? `If residue feeds it, Listeria can grow by ${growth_log10.toFixed(1)} powers of ten until then.`
      : 'That is too short for germs to double more than once.';
  return {
    numbers: [{ label: 'Growth until then', value: growth_log10, unit: 'log10', working: growth.working }],
    why,
    caveats: [],
  };
}

/** Water that a face under the limit of slope keeps by surface tension. */
export function filmOn(
  area_cm2: number,
  slope_deg: number,
): { readonly number: FindingNumber; readonly depth_mm: number } | null {
  const kept = retainedVolume.run(
    { area_cm2, slope_deg, length_mm: Math.max(1, Math.sqrt(area_cm2 * 100)) },
    {
      area_cm2: 'measured on the model',
      slope_deg: 'measured on the model',
      length_mm: 'root of the area',
    },
  );
  if (kept.kind === 'refused') return null;
  return {
    number: { label: 'Film that can stay', value: kept.values.volume_mL, unit: 'mL', working: kept.working },
    depth_mm: kept.values.meanDepth_mm,
  };
}

function driesInWords(dries_h: number, interval_h: number): string {
  if (!Number.isFinite(dries_h)) return 'It does not dry by itself.';
  const hours = dries_h < 10 ? dries_h.toFixed(1) : String(Math.round(dries_h));
  return dries_h > interval_h
    ? `It takes about ${hours} h to dry and the machine is cleaned every ${interval_h} h: it never gets dry.`
    : `It stays wet for about ${hours} h after each cleaning.`;
}

/**
 * Listeria as the yardstick: it does not grow at pH 4.4 and below, nor at a water activity of 0.92 and below
 * (Regulation (EC) 2073/2005, note to 1.3; pH seen in a copy, water activity from memory). What is not known counts
 * as growing.
 */
function supportsGrowth(brief: Brief): { readonly yes: boolean; readonly because: string } {
  const grows =
    brief.products.length === 0 ||
    brief.products.some((p) => (p.ph ?? 7) > 4.4 && (p.waterActivity ?? 1) > 0.92);
  return {
    yes: grows,
    because:
      'All products of the brief are too acid or too dry for Listeria; yeasts, moulds and carry-over remain, and rinse water can dilute that protection.',
  };
}
