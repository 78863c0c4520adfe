/**
 * Standing liquid with seams and tunnels below a width closed, beside what stands when they are open.
 *
 * Two parts that lie on each other are often drawn a little apart, and liquid that would stand there for days drains at
 * once in the model. Walls are moved outwards by half the width, the air is flooded, and the pools that are found are
 * measured in the model as it is drawn. Closing can only raise levels: every pool that stands with open seams lies in one
 * that stands with closed ones.
 */
import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import type { Control, Pool, SurveySettings } from '../result.ts';
import { type AirSpace, airSpaceOf } from './air-space.ts';
import { asDrawn } from './as-drawn.ts';
import type { Union } from './exact/solid.ts';
import { rounded } from './rounded.ts';
import { sealedSoup } from './sealed-soup.ts';
import { measureStandingLiquid } from './standing-liquid.ts';

/** As `measureStandingLiquid`, for settings with `sealedBelow_mm` above 0. `air`: that of the model as it is drawn. */
export function measureSealedLiquid(
  model: Model,
  settings: SurveySettings,
  control: Control,
  air: AirSpace,
  union?: Union,
): MeasureOutcome<'standingLiquid'> {
  const open = measureStandingLiquid(model, { ...settings, sealedBelow_mm: 0 }, control, air, union);
  const closed = measureStandingLiquid(
    model,
    settings,
    control,
    sealedAir(model, settings, control, air),
    union,
  );
  const left = new Set(open.measure.places);
  const places = closed.measure.places.map((pool): Pool => {
    let unsealed_mL = 0;
    for (const other of left) {
      if (!holds(pool, other)) continue;
      unsealed_mL += other.volume_mL;
      left.delete(other);
    }
    return { ...pool, unsealed_mL };
  });
  const { sealedBelow_mm } = settings;
  return {
    ...closed,
    measure: { total_mL: closed.measure.total_mL, places, unsealed_mL: open.measure.total_mL },
    notes: [
      ...closed.notes,
      `Seams and tunnels below ${sealedBelow_mm} mm count as closed for standing liquid: ${rounded(closed.measure.total_mL)} mL stand so, ${rounded(open.measure.total_mL)} mL with all of them open.`,
    ],
  };
}

/** Pools of the air between walls that were moved outwards, in the model as it is drawn. */
function sealedAir(
  model: Model,
  settings: SurveySettings,
  control: Control,
  { soup, bins, ...air }: AirSpace,
): AirSpace {
  const by_mm = settings.sealedBelow_mm / 2;
  const narrowed = airSpaceOf(model, settings, control, sealedSoup(soup, by_mm));
  const pools = narrowed.pools.flatMap(({ region, spill }) => {
    const drawn = asDrawn(soup, bins, region, by_mm, settings.contact_mm);
    return drawn ? [{ region: drawn, spill }] : [];
  });
  return { ...air, soup, bins, pools };
}

/** Bounds are kept to about a column, mm. */
const slack_mm = 2;

function holds({ bounds_mm: [low, high] }: Pool, { deepest_mm }: Pool): boolean {
  return deepest_mm.every((c, k) => c >= low[k] - slack_mm && c <= high[k] + slack_mm);
}
