/** Proposes the area class of a part (EN 1672-2), with the reason in a sentence. */
import type { AreaClass } from '@coveline/catalogue';
import { theName } from '../names/display.ts';
import type { Noun } from '../names/nouns.ts';
import type { Known } from './known.ts';

export interface Proposal<T> {
  readonly value: T;
  readonly reason: string;
}

/** Things that product runs through or lies in. */
const touchesProduct: ReadonlySet<Noun> = new Set([
  'hopper',
  'tank',
  'pipe',
  'valve',
  'pump',
  'nozzle',
  'dosing',
  'container',
  'lid',
]);
/** Things that stand below or behind what splashes reach. */
const staysAway: ReadonlySet<Noun> = new Set(['foot', 'castor', 'waste']);
/** Filters and plenums let air down on the product; they are judged as sterile-air hood, not by what hangs above. */
const isAirSource: ReadonlySet<Noun> = new Set(['filter', 'hood']);

/** Faces within this distance of an open mouth, sideways and up or down, count as touched by product. */
const besideMouth_mm = 60;
/** Parts that end lower than this above the floor are out of reach of product. */
const nearFloor_mm = 60;

export function proposeArea(known: Known, part: number): Proposal<AreaClass> {
  const is = known.is[part];
  if (is?.from === 'name' && touchesProduct.has(is.noun))
    return { value: 'food', reason: `Food area: its name says "${is.word}", which product touches.` };
  if (is && staysAway.has(is.noun))
    return { value: 'nonFood', reason: `Non-food area: its name says "${is.word}".` };
  const over = hangsOver(known, part);
  if (over && !(is && isAirSource.has(is.noun)))
    return {
      value: 'food',
      reason: `Food area: it hangs ${Math.round(over.height_mm)} mm above the open mouth of ${over.name}; what drops from it gets into product.`,
    };
  const beside = standsBeside(known, part);
  if (beside)
    return {
      value: 'food',
      reason: `Food area: it stands within ${besideMouth_mm} mm of the open mouth of ${beside}.`,
    };
  if (is?.from === 'assembly' && touchesProduct.has(is.noun) && is.noun !== 'container' && is.noun !== 'pump')
    return {
      value: 'splash',
      reason: `Splash area: it belongs to an assembly named after "${is.word}", but no name says that product touches it.`,
    };
  if (known.extents[part].high[2] < floorOf(known) + nearFloor_mm)
    return { value: 'nonFood', reason: `Non-food area: it ends within ${nearFloor_mm} mm of the floor.` };
  if (is?.noun === 'enclosure' || is?.noun === 'drive')
    return {
      value: 'splash',
      reason: `Splash area: ${is.noun === 'drive' ? 'a drive' : 'an enclosure'} that stands away from product, but is washed with the machine.`,
    };
  return {
    value: 'splash',
    reason: 'Splash area: nothing says that product touches it, and nothing says that it stays dry.',
  };
}

function hangsOver(known: Known, part: number): { name: string; height_mm: number } | null {
  for (const { mouth, above } of known.mouths) {
    const hit = above.find((h) => h.part === part);
    if (hit) return { name: theName(known.model.parts[mouth.part].name), height_mm: hit.height_mm };
  }
  return null;
}

function standsBeside(known: Known, part: number): string | null {
  const { low, high } = known.extents[part];
  for (const { mouth } of known.mouths) {
    const near = [0, 1, 2].every((i) => {
      const half = i < 2 ? mouth.half_mm[i] : 0;
      return (
        low[i] < mouth.at_mm[i] + half + besideMouth_mm && high[i] > mouth.at_mm[i] - half - besideMouth_mm
      );
    });
    // A box round a whole frame says nothing about where its members are.
    const compact = Math.max(high[0] - low[0], high[1] - low[1]) < 1500 && high[2] - low[2] < 400;
    if (near && compact) return theName(known.model.parts[mouth.part].name);
  }
  return null;
}

function floorOf({ extents }: Known): number {
  return extents.reduce((least, e) => Math.min(least, e.low[2]), Infinity);
}
