/** Proposes the area class of a part (EN 1672-2), with the reason in a sentence. */
import type { AreaClass } from '@coveline/catalogue';
import { buildTree, closestPoint, newNearest, type Tree } from '@coveline/survey';
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
  'blank',
  'valve',
  'pump',
  'nozzle',
  'dosing',
  'container',
  'lid',
]);
/** Things that stand below or behind what splashes reach. */
const staysAway: ReadonlySet<Noun> = new Set(['foot', 'castor', 'waste']);
/** Lines and vessels of these media carry no product. */
const utility =
  /(?<!\p{L})(drain|rinse|rinsing|cleaning|water|air|steam|exhaust|vacuum|cip|ablauf|abwasser|wasser|spül|reinigung|druckluft|dampf|abluft|eau|rinçage|nettoyage|air comprimé|vapeur|agua|aclarado|limpieza|aire|vapor|acqua|lavaggio|pulizia|aria|vapore|spoel|reiniging|stoom)/iu;
/** What people hold or turn on a part that product touches. */
const handle =
  /(?<!\p{L})(handle|lever|knob|bracket|support|holder|leg|griff|hebel|halter|poignée|levier|maniglia|leva|palanca|hendel|support)(?!\p{L})/iu;
const saysProduct = /(?<!\p{L})(product|produkt|produit|producto|prodotto|product)(?!\p{L})/iu;

/** Filters and plenums let air down on the product; they are judged as sterile-air hood, not by what hangs above. */
const isAirSource: ReadonlySet<Noun> = new Set(['filter', 'hood']);

/** Faces within this distance of an open mouth, sideways and up or down, count as touched by product. */
const besideMouth_mm = 60;
/** Parts that end lower than this above the floor are out of reach of product. */
const nearFloor_mm = 60;

export function proposeArea(known: Known, part: number): Proposal<AreaClass> {
  const is = known.is[part];
  const { name, assembly } = known.model.parts[part];
  const touching = contactInName(known, part);
  if (touching) return { value: 'food', reason: `Food area: ${touching}.` };
  const away = standsAway(known, part);
  if (away) return { value: 'nonFood', reason: `Non-food area: ${away}.` };
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
  if (is && touchesProduct.has(is.noun) && utility.test([name, ...assembly].join(' ')))
    return {
      value: 'splash',
      reason: `Splash area: a ${is.word} by its name, but of a line without product.`,
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

/** Why product touches it, by its name and that of its assembly; null when they do not say so. */
function contactInName(known: Known, part: number): string | null {
  const is = known.is[part];
  const { name, assembly } = known.model.parts[part];
  if (handle.test(name) || utility.test([name, ...assembly].join(' '))) return null;
  if (saysProduct.test(name)) return 'its name says that product is there';
  if (is?.from === 'name' && touchesProduct.has(is.noun) && (is.noun !== 'lid' || known.isPack(part)))
    return `its name says "${is.word}", which product touches`;
  if (
    is?.noun === 'gasket' &&
    assembly.some((a) => /(?<!\p{L})(product|union|coupling|pump|hopper|nozzle|valve|pipe)/iu.test(a))
  )
    return 'a seal of a line or vessel that product runs through';
  return null;
}

function standsAway(known: Known, part: number): string | null {
  const is = known.is[part];
  if (is && staysAway.has(is.noun)) return `its name says "${is.word}"`;
  const foot = known.model.parts[part].assembly.find((a) =>
    /(?<!\p{L})(foot|feet|castor|caster|stellfu[sß]|pied|piedino|voet)/iu.test(a),
  );
  return foot ? `it belongs to ${theName(foot)}` : null;
}

function hangsOver(known: Known, part: number): { name: string; height_mm: number } | null {
  for (const { mouth, above } of known.mouths) {
    const hit = above.find((h) => h.part === part);
    if (hit) return { name: theName(known.model.parts[mouth.part].name), height_mm: hit.height_mm };
  }
  return null;
}

function standsBeside(known: Known, part: number): string | null {
  const { model, extents, mouths } = known;
  const { low, high } = extents[part];
  let alone: Tree | undefined;
  for (const { mouth } of mouths) {
    const reach = Math.max(...mouth.half_mm) + besideMouth_mm;
    if ([0, 1, 2].some((i) => low[i] > mouth.at_mm[i] + reach || high[i] < mouth.at_mm[i] - reach)) continue;
    // The box of a long or bent part says little about where it is, so its surface is asked.
    alone ??= buildTree({ ...model, parts: [model.parts[part]] });
    if (closestPoint(alone, ...mouth.at_mm, reach, newNearest()))
      return theName(model.parts[mouth.part].name);
  }
  return null;
}

function floorOf({ extents }: Known): number {
  return extents.reduce((least, e) => Math.min(least, e.low[2]), Infinity);
}
