/**
 * STEP (ISO 10303-21 with AP203, AP214 or AP242): structure, names, placements, colours and units by our own reader of
 * the text; the geometry of each body by the kernel; then both are held against each other.
 */
import type { LengthUnit, Model } from '@coveline/model';
import { Assembler } from '../assemble.ts';
import { CadError } from '../error.ts';
import { bytesHash } from '../hash.ts';
import { defaultAngle_rad, defaultDeviation_mm, type ReadOptions } from '../options.ts';
import { solidEntities, surfaceEntities } from './bodies.ts';
import { type BodyReading, readBody } from './body.ts';
import { bodyColour, readColours } from './colours.ts';
import { danglingReferences } from './dangling.ts';
import { type Extract, extractBody } from './extract.ts';
import { kernel, kernelFailure, resetKernel, retireIfLarge } from './kernel.ts';
import { type Occurrence, walkAssembly } from './occurrences.ts';
import { externalFiles, readProducts } from './products.ts';
import { scaleMismatch } from './scaleCheck.ts';
import { instancesOf, type Part21Index, scanPart21 } from './scan.ts';
import { millimetresPerUnit } from './units.ts';

export async function readStep(bytes: Uint8Array, options: ReadOptions): Promise<Model> {
  const report = options.onProgress ?? (() => {});
  report('Reading the STEP text', 0);
  const index = scanPart21(bytes);
  const colours = readColours(index);
  const { occurrences, losses } = walkAssembly(index, readProducts(index), colours);
  if (occurrences.length === 0) throw noGeometry(index, losses);

  const out = new Assembler();
  const unit = unitOfFile(index, occurrences, out);
  noteText(index, losses, out);
  const readings = await readBodies(index, occurrences, options, report);
  let deviation_mm = 0;
  let lost = '';
  const told = new Set<number>();
  const bodiesOfProduct = bodiesByProduct(occurrences);
  for (const occurrence of occurrences) {
    const reading = readings.get(occurrence.body.id)!;
    const { name, assembly } = nameOf(occurrence, bodiesOfProduct);
    const where = `Body "${name}" (#${occurrence.body.id})`;
    let id: string | undefined;
    if (reading.shape) {
      deviation_mm = Math.max(deviation_mm, reading.deviation_mm);
      const { body } = occurrence;
      const color = occurrence.colour ?? bodyColour(colours, body.id, body.shells, body.faces);
      id = out.add({
        name,
        assembly,
        shape: reading.shape,
        placement: occurrence.placement,
        ...(color ? { color } : {}),
      });
    } else lost ||= `${where}: ${reading.losses.join('; ')}`;
    if (told.has(occurrence.body.id)) continue;
    told.add(occurrence.body.id);
    if (!reading.shape) out.note('warning', `${where} is left out: ${reading.losses.join('; ')}.`);
    else if (reading.losses.length > 0) out.note('warning', `${where}: ${reading.losses.join('; ')}.`, id);
    if (reading.remarks.length > 0) out.note('info', `${where}: ${reading.remarks.join('; ')}.`, id);
  }
  if (out.partCount === 0) throw nothingLeft(readings, occurrences, lost);
  noteUnplaced(index, readings, out);
  report('Reading the bodies', 1);
  return out.model(unit, deviation_mm);
}

/** What is wrong with the text as a whole. */
function noteText(index: Part21Index, losses: readonly string[], out: Assembler): void {
  if (!index.closed) {
    out.note('warning', 'The line that ends a STEP file is missing; what stands before it was read.');
  }
  const { repeated, malformed } = index;
  if (repeated.length > 0) {
    out.note(
      'warning',
      `${repeated.length} entities are defined twice (first #${repeated[0]}); the first definition was kept.`,
    );
  }
  if (malformed.count > 0) {
    out.note(
      'warning',
      `${malformed.count} statements of the file make no sense (first "${malformed.first.replace(/\s+/g, ' ')}"); the file is damaged, so export it again.`,
    );
  }
  const dangling = danglingReferences(index);
  if (dangling.count > 0) {
    out.note(
      'warning',
      `The file lacks entities that it refers to ${dangling.count} times (first #${dangling.first}, used by #${dangling.user}); something may be missing, so export it again.`,
    );
  }
  for (const loss of losses) out.note('warning', loss);
  const files = externalFiles(index);
  if (files.length > 0) {
    out.note(
      'warning',
      `Parts that stand in other files are left out (${shortList(files)}); export the assembly as one file.`,
    );
  }
}

interface StepReading extends BodyReading {
  readonly refused: boolean;
}

/** Each body once; bodies whose text is the same but for its numbering share one reading. */
async function readBodies(
  index: Part21Index,
  occurrences: readonly Occurrence[],
  options: ReadOptions,
  report: (stage: string, done: number) => void,
): Promise<Map<number, StepReading>> {
  const wanted = new Map<number, Occurrence>();
  for (const occurrence of occurrences) {
    if (!wanted.has(occurrence.body.id)) wanted.set(occurrence.body.id, occurrence);
  }
  const readings = new Map<number, StepReading>();
  const byText = new Map<string, StepReading>();
  let done = 0;
  for (const [id, { body, context }] of wanted) {
    report('Reading the bodies', done++ / wanted.size);
    const factor = millimetresPerUnit(index, context) ?? 1;
    const extract = extractBody(index, id, context, representationFor(body.entity), factor);
    const key = bytesHash(extract.text);
    const reading = byText.get(key) ?? (await readOne(extract, body, options, index, factor));
    byText.set(key, reading);
    readings.set(id, reading);
  }
  return readings;
}

async function readOne(
  extract: Extract,
  body: Occurrence['body'],
  options: ReadOptions,
  index: Part21Index,
  mmPerUnit: number,
): Promise<StepReading> {
  if (extract.refused) return { losses: extract.faults, remarks: [], deviation_mm: 0, refused: true };
  const oc = await kernel(options.wasmUrl);
  try {
    const reading = readBody(oc, {
      text: extract.text,
      solid: body.solid,
      faces: body.faces.length,
      deviation_mm: options.deviation_mm ?? defaultDeviation_mm,
      angle_rad: options.angle_rad ?? defaultAngle_rad,
    });
    retireIfLarge(oc);
    const losses = [...extract.faults, ...reading.losses];
    const mismatch = reading.shape && scaleMismatch(index, body, mmPerUnit, reading.shape);
    if (mismatch) losses.push(mismatch);
    return { ...reading, losses, refused: false };
  } catch (thrown) {
    const { text, trapped } = kernelFailure(oc, thrown);
    if (trapped) resetKernel();
    return {
      losses: [...extract.faults, `the CAD kernel failed on it (${text})`],
      remarks: [],
      deviation_mm: 0,
      refused: false,
    };
  }
}

function representationFor(entity: string): string {
  if (entity === 'FACETED_BREP') return 'FACETED_BREP_SHAPE_REPRESENTATION';
  if ((surfaceEntities as readonly string[]).includes(entity)) return 'MANIFOLD_SURFACE_SHAPE_REPRESENTATION';
  return 'ADVANCED_BREP_SHAPE_REPRESENTATION';
}

/** A product with one body lends it its name; a product with several becomes the assembly above them. */
function nameOf(
  { names, body, product: owner }: Occurrence,
  bodiesOfProduct: ReadonlyMap<number, ReadonlySet<number>>,
): { name: string; assembly: readonly string[] } {
  const own = meaningful(body.name) ? body.name : '';
  const product = names[names.length - 1];
  if (product === undefined) return { name: own || `Body ${body.id}`, assembly: [] };
  if ((bodiesOfProduct.get(owner)?.size ?? 0) < 2) return { name: product, assembly: names.slice(0, -1) };
  return { name: own || product, assembly: names };
}

/** Labels that exporters write where the user gave none. */
const meaningful = (name: string) => !/^\s*(none|solid|body|brep|shell|\*|\d*)\s*$/i.test(name);

function bodiesByProduct(occurrences: readonly Occurrence[]): Map<number, Set<number>> {
  const out = new Map<number, Set<number>>();
  for (const { product, body } of occurrences) {
    const set = out.get(product) ?? new Set<number>();
    set.add(body.id);
    out.set(product, set);
  }
  return out;
}

function unitOfFile(index: Part21Index, occurrences: readonly Occurrence[], out: Assembler): LengthUnit {
  const factors = new Set<number>();
  for (const context of new Set(occurrences.map((o) => o.context))) {
    const factor = millimetresPerUnit(index, context);
    if (factor === undefined) {
      out.note(
        'warning',
        'The file does not state the length unit of all its bodies; they are read as millimetres, so check a known size.',
      );
      factors.add(1);
    } else factors.add(factor);
  }
  const known: readonly [number, LengthUnit][] = [
    [1, 'mm'],
    [10, 'cm'],
    [1000, 'm'],
    [25.4, 'in'],
  ];
  const [first] = factors;
  const unit = known.find(([factor]) => Math.abs(factor / first - 1) < 1e-6)?.[1];
  if (factors.size > 1)
    out.note('info', 'The file mixes length units; all bodies were converted to millimetres.');
  if (!unit) {
    out.note('info', `The file is written in units of ${first} mm; it was converted to millimetres.`);
  }
  return unit ?? 'mm';
}

/** Bodies in the text that no part shows. */
function noteUnplaced(index: Part21Index, readings: ReadonlyMap<number, StepReading>, out: Assembler): void {
  const all = [...solidEntities, ...surfaceEntities].flatMap((entity) => instancesOf(index, entity));
  const missing = all.filter((id) => !readings.has(id));
  if (missing.length > 0) {
    out.note(
      'warning',
      `${missing.length} of the ${all.length} bodies in the file stand in no product and no representation (first #${missing[0]}); they are left out.`,
    );
  }
}

function noGeometry(index: Part21Index, losses: readonly string[]): CadError {
  const bodies = [...solidEntities, ...surfaceEntities].flatMap((entity) => instancesOf(index, entity));
  if (bodies.length > 0) {
    return new CadError(
      'damaged',
      `The STEP file names ${bodies.length} bodies, but nothing leads to them; the file is damaged, so export it again.`,
    );
  }
  const files = externalFiles(index);
  if (files.length > 0) {
    return new CadError(
      'noGeometry',
      `The STEP file is an assembly whose parts stand in other files (${shortList(files)}); export the assembly as one file.`,
    );
  }
  if (index.ids.length === 0) {
    return new CadError('noGeometry', 'The STEP file has an empty DATA section; export the model again.');
  }
  const why = losses[0] ? ` (${losses[0].replace(/\.$/, '')})` : '';
  return new CadError(
    'noGeometry',
    `The STEP file holds no solid or surface body${why}; export the model as solids, not as curves or a drawing.`,
  );
}

const shortList = (names: readonly string[]) =>
  names.length > 3 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : names.join(', ');

function nothingLeft(
  readings: ReadonlyMap<number, StepReading>,
  occurrences: readonly Occurrence[],
  lost: string,
): CadError {
  const refused = [...readings.values()].some((reading) => reading.refused);
  const n = new Set(occurrences.map((o) => o.body.id)).size;
  const which =
    n === 1
      ? 'The only body in the STEP file cannot be read'
      : `None of the ${n} bodies in the STEP file can be read, the first`;
  return new CadError(refused ? 'hostile' : 'damaged', `${which} because: ${lost}; export the file again.`);
}
