/** Groups of surfaces, each with the way in which it is cleaned: proposed from what the parts are and where they sit. */
import { type Soil, type Template, templates } from '@coveline/catalogue';
import type { Brief, CleaningStep, CleaningWay, PartData, SurfaceGroup } from '@coveline/project';
import type { Noun } from '../names/nouns.ts';
import type { Scene } from '../scene.ts';

/** Product runs inside them; the inside is cleaned with the line. */
const lines: ReadonlySet<Noun> = new Set([
  'pipe',
  'valve',
  'pump',
  'blank',
  'dosing',
  'nozzle',
  'tank',
  'hose',
]);
/** Water and current do not go together. */
const electrical: ReadonlySet<Noun> = new Set(['enclosure', 'control', 'cable', 'drive', 'sensor']);
/** Parts of this size and less go into a washer, mm. Common practice: racks of 500 mm. */
const washer_mm = 500;

interface Kind {
  readonly id: string;
  readonly name: string;
  readonly way: CleaningWay;
}

/** As they are told, in this order. Containers and lids pass through and belong to none. */
export function proposeGroups(scene: Scene): readonly SurfaceGroup[] {
  const soil = soilOf(scene.brief);
  const found = new Map<string, { kind: Kind; parts: string[]; reasons: Set<string> }>();
  scene.parts.forEach((part, p) => {
    if (scene.known.isPack(p)) return;
    const { kind, reason } = kindOf(scene, part, p);
    const group = found.get(kind.id) ?? { kind, parts: [], reasons: new Set<string>() };
    group.parts.push(part.partId);
    group.reasons.add(reason);
    found.set(kind.id, group);
  });
  return [...found.values()]
    .sort((a, b) => order.indexOf(a.kind.id) - order.indexOf(b.kind.id))
    .map(({ kind, parts, reasons }) => ({
      ...kind,
      soil,
      parts,
      steps: stepsFor(kind.way, soil),
      reasons: [...reasons],
    }));
}

const line: Kind = { id: 'line', name: 'Product line, inside', way: 'inPlace' };
const removed: Kind = { id: 'removed', name: 'Parts that come off', way: 'outOfPlace' };
const open: Kind = { id: 'open', name: 'Open surfaces', way: 'foamAndRinse' };
const wiped: Kind = { id: 'wiped', name: 'Electrical parts and what hands wipe', way: 'byHand' };
const dry: Kind = { id: 'dry', name: 'Dry surfaces', way: 'dry' };
const order = [line, removed, open, wiped, dry].map((k) => k.id);

function kindOf(scene: Scene, part: PartData, p: number): { readonly kind: Kind; readonly reason: string } {
  const { brief } = scene;
  const noun = scene.known.is[p]?.noun;
  const may = (way: CleaningWay) => brief.cleaning.ways.includes(way);
  if (scene.dryOnly) return { kind: dry, reason: 'The brief asks for dry cleaning only.' };
  if (noun !== undefined && electrical.has(noun))
    return { kind: wiped, reason: 'Drives, controls, cables and cabinets are wiped: jets drive water in.' };
  if (noun !== undefined && lines.has(noun) && part.areaClass === 'food') {
    if (may('inPlace')) return { kind: line, reason: 'Product runs inside, and the brief has a circuit.' };
    if (may('outOfPlace'))
      return { kind: removed, reason: 'Product runs inside, and without a circuit it is taken apart.' };
  }
  if (may('outOfPlace') && comesOff(part) && size(scene, p) <= washer_mm)
    return { kind: removed, reason: `It comes off and is no longer than ${washer_mm} mm.` };
  if (may('foamAndRinse'))
    return { kind: open, reason: 'It stays on the machine and stands foam and a gentle rinse.' };
  return { kind: { ...wiped, name: 'What hands clean' }, reason: 'The brief names no other way.' };
}

const comesOff = ({ joint, areaClass }: PartData) =>
  (joint === 'loose' || joint === 'clamped') && areaClass === 'food';

function size(scene: Scene, p: number): number {
  const { low, high } = scene.known.extents[p];
  return Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}

const starchy = /porridge|rice|starch|pasta|custard|pudding|dough|potato|brei|milchreis|nudel/i;
const fatDry = /choc|cocoa|nut paste|kuvert/i;
const sweet = /syrup|caramel|honey|sugar|jam/i;
const fruity = /fruit|juice|pulp|puree/i;

/** The soil of the worst product: what sets or clings most. Names only hint; the user overrules. */
export function soilOf({ products, cleaning }: Brief): Soil {
  const dryOnly = cleaning.ways.length > 0 && cleaning.ways.every((w) => w === 'dry');
  const some = (test: RegExp) => products.some((p) => test.test(p.name));
  if (some(fatDry)) return 'fatDry';
  if (dryOnly) return 'powder';
  if (some(starchy)) return 'starch';
  if (products.some((p) => (p.fat_percent ?? 0) > 10)) return 'fat';
  if (products.some((p) => (p.protein_percent ?? 0) > 1 && p.heating === 'beforeFilling'))
    return 'proteinHeated';
  if (products.some((p) => (p.protein_percent ?? 0) > 1)) return 'proteinCold';
  if (some(sweet)) return 'sugar';
  if (some(fruity)) return 'fruit';
  return 'starch';
}

/** Steps of the template that fits way and soil best; that of the way alone where none fits both. */
export function stepsFor(way: CleaningWay, soil: Soil): CleaningStep[] {
  const template = templateFor(way, soil);
  return template ? template.steps.map(stepOf) : [];
}

export function templateFor(way: CleaningWay, soil: Soil): Template | undefined {
  const fits = templates.filter((t) => t.ways.includes(way));
  return fits.find((t) => t.soil === soil) ?? fits[0];
}

/** In the middle of each range, which both ends of a rule then allow. */
function stepOf(t: Template['steps'][number]): CleaningStep {
  const middle = ([low, high]: readonly [number, number]) => Number(((low + high) / 2).toPrecision(3));
  return {
    kind: t.kind,
    medium: t.medium,
    action: t.action,
    ...(t.concentration_pct ? { concentration_pct: middle(t.concentration_pct) } : {}),
    ...(t.temperature_degC ? { temperature_degC: middle(t.temperature_degC) } : {}),
    ...(t.time_min ? { time_min: middle(t.time_min) } : {}),
    how: t.how,
  };
}
