import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { dividePart } from '../patchwork/divide-part.ts';
import { patchesOf } from '../patchwork/patches.ts';
import { Pieces } from '../patchwork/pieces.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, JetShadow, SurveySettings } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import type { Site } from '../site.ts';
import { step } from '../stopped.ts';
import { partBoxes } from '../tree/boxes.ts';
import { type Material, partAt } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { weldOf } from '../weld/weld.ts';
import { type Asked, aside, questionOn, shaded, turned } from './ask.ts';
import { type NozzleSet, nozzleSet } from './nozzle-set.ts';
import { shadesOf } from './shades.ts';
import { Tally } from './tally.ts';

/** Looks between two reports of progress: some milliseconds. */
const pulseEvery = 4096;

/**
 * What the nozzles see in a straight line, within cone and range, and every patch that none of them sees (areas cm2,
 * lengths mm, angles degrees).
 *
 * Counted is the surface that is open to the air, no farther from a nozzle than its range, and before air in which a
 * nozzle stands. `cutOff`: knows the air without nozzles, see `cutOffFrom`. A nozzle neither shades itself nor sees
 * itself.
 */
export function measureJetReach(
  model: Model,
  settings: SurveySettings,
  { nozzles }: Pick<Site, 'nozzles'>,
  control: Control = {},
  cutOff: Sealed = nothingSealed,
): MeasureOutcome<'jetReach'> {
  const material = materialOf(model);
  const triangles = material.tree.start[model.parts.length];
  const set = nozzleSet(model, nozzles);
  const tally = new Tally(set, triangles);
  if (set.nozzles.length === 0) {
    return {
      measure: { seen_cm2: 0, unseen_cm2: 0, beyond_cm2: 0, nozzles: [], places: [] },
      field: tally.field,
      drawings: new Map(),
      notes: [...set.notes, 'Jet reach: no nozzle is given, so nothing was looked for.'],
    };
  }
  const pieces = new Pieces();
  let looks = 0;
  let part = 0;
  const whole_mm2 = areaOf(model);
  const size_mm = Math.min(settings.jetSpacing_mm, Math.sqrt(whole_mm2) / along);
  const asked: Asked = {
    material,
    boxes: partBoxes(material.tree),
    set,
    cutOff,
    contact_mm: settings.contact_mm,
    pieces,
    tally,
    size_mm,
    looks: Math.max(1, enough / ((4 * whole_mm2) / size_mm ** 2)),
    pulse: () => {
      if (++looks % pulseEvery === 0) step(control, 'jet reach', part / model.parts.length);
    },
  };
  const firstPiece: number[] = [];
  for (part = 0; part < model.parts.length; part++) {
    step(control, 'jet reach', part / model.parts.length);
    firstPiece.push(pieces.count);
    dividePart(model, material.tree, part, questionOn(part, asked));
  }
  return told(model, settings, asked, firstPiece);
}

/** Small models are looked at more finely: so many triangles lie along the side of a square as large as the surface. */
const along = 50;

/**
 * So many looks at borders are made in any case, most of a second. A large machine has so many borders that what is
 * too much in one leaf and too little in the next cancels out.
 */
const enough = 3e5;

/** mm2 */
function areaOf(model: Model): number {
  let whole = 0;
  for (const { shape } of model.parts) for (const area of weldOf(model.shapes[shape]).areas) whole += area;
  return whole;
}

const because = new Map<number, JetShadow['because']>([
  [shaded, 'shaded'],
  [aside, 'aside'],
  [turned, 'turned'],
]);

/** `firstPiece`: per part the first of its pieces. */
function told(
  model: Model,
  settings: SurveySettings,
  { material, set, tally, pieces }: Asked,
  firstPiece: readonly number[],
): MeasureOutcome<'jetReach'> {
  const { patches, small, small_mm2 } = patchesOf(pieces, settings.leastShadow_cm2 * 100);
  const name = placeNamer('shadow');
  const drawings = new Map<string, Drawing>();
  const places = patches
    .map((patch) => ({ patch, part: firstPiece.findLastIndex((first) => first <= patch.root) }))
    .sort((a, b) => b.patch.area_mm2 - a.patch.area_mm2 || a.part - b.part || a.patch.root - b.patch.root)
    .map(({ patch, part }): JetShadow => {
      const parts = [model.parts[part].id];
      const id = name(parts, patch.at_mm);
      drawings.set(id, { triangles: patch.triangles });
      return {
        id,
        parts,
        at_mm: patch.at_mm,
        bounds_mm: patch.bounds_mm,
        area_cm2: patch.area_mm2 / 100,
        because: because.get(patch.kind) ?? 'shaded',
        shadedBy: shadesOf(material.tree, set, part, patch, settings.contact_mm * 1.25).map(
          (p) => model.parts[p].id,
        ),
      };
    });
  return {
    measure: {
      seen_cm2: tally.seen_mm2 / 100,
      unseen_cm2: tally.unseen_mm2 / 100,
      beyond_cm2: tally.beyond_mm2 / 100,
      nozzles: set.nozzles.map(({ id }, i) => ({
        id,
        seen_cm2: tally.area[i] / 100,
        farthest_mm: tally.farthest[i],
        incidence_deg: tally.area[i] > 0 ? ((tally.slant[i] / tally.area[i]) * 180) / Math.PI : 0,
      })),
      places,
    },
    field: tally.field,
    drawings,
    notes: [...set.notes, ...buried(model, material, set), ...left(small, small_mm2, tally, settings)],
  };
}

function buried(model: Model, material: Material, { nozzles, own }: NozzleSet): string[] {
  return nozzles.flatMap(({ id, at_mm: [x, y, z] }, i) => {
    const part = partAt(material, x, y, z);
    return part < 0 || own[i].has(part)
      ? []
      : [`Jet reach: the nozzle "${id}" stands in the material of ${model.parts[part].id}, which shades it.`];
  });
}

function left(small: number, small_mm2: number, { beyond_mm2 }: Tally, settings: SurveySettings): string[] {
  const notes: string[] = [];
  if (small > 0) {
    notes.push(
      `Jet reach: ${small} unseen patches smaller than ${settings.leastShadow_cm2} cm2, ${(small_mm2 / 100).toFixed(1)} cm2 together, are counted and not listed.`,
    );
  }
  if (beyond_mm2 > 0) {
    notes.push(
      `Jet reach: ${(beyond_mm2 / 100).toFixed(0)} cm2 lie beyond the range of every nozzle and are not counted.`,
    );
  }
  return notes;
}
