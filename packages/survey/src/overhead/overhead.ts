import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Overhang, SurveySettings } from '../result.ts';
import type { Site } from '../site.ts';
import { boxAround, mouthFault } from '../sky/disc.ts';
import { filterFault } from '../sky/filter-face.ts';
import { step } from '../stopped.ts';
import { materialOf } from '../tree/material.ts';
import type { Above } from './above.ts';
import { facing, type Hanging, hangingOver } from './hanging.ts';

/** A mouth that is steeper than this catches nothing that falls: cosine of about 89 degrees. */
const steepest = 0.02;
/** Less of a mouth than this is a matter of rounding. */
const negligible = 5e-4;

/**
 * Parts from which something can fall straight into a mouth, or into the ring around it (shares 0 to 1, mm). What
 * falls stops at the first thing below it: a part that another one, or a filter face, hides altogether from the mouth
 * is not listed, and the shares over one mouth add up to at most 1. Containers do not hang over themselves.
 */
export function measureOverhead(
  model: Model,
  settings: SurveySettings,
  site: Pick<Site, 'mouths' | 'filters'>,
  control: Control = {},
): MeasureOutcome<'overhead'> {
  const { tree, closed } = materialOf(model);
  const field = new Float32Array(tree.start[model.parts.length]).fill(Number.NaN);
  const drawings = new Map<string, Drawing>();
  const notes: string[] = [];
  if (site.mouths.length === 0) notes.push('Overhead: no mouth is given, so nothing was looked for.');
  const indexOf = new Map(model.parts.map(({ id }, p) => [id, p]));
  const indices = (ids: readonly string[]) =>
    new Set(ids.map((id) => indexOf.get(id)).filter((p) => p !== undefined));
  const filters = site.filters.filter((f) => filterFault(f) === null);
  const name = placeNamer('overhang');
  const places: Overhang[] = [];
  let mouths = 0;
  site.mouths.forEach((mouth, n) => {
    step(control, 'overhead', n / site.mouths.length);
    const fault = mouthFault(mouth) ?? (facing(mouth) < steepest ? 'it does not look up' : null);
    if (fault) {
      notes.push(`Overhead: the mouth "${mouth.id}" is left out, because ${fault}.`);
      return;
    }
    mouths++;
    const above: Above = {
      tree,
      closed,
      own: indices(mouth.parts),
      filters,
      filterParts: indices(filters.flatMap(({ parts }) => parts)),
      contact_mm: settings.contact_mm,
    };
    const over = hangingOver(above, mouth, null);
    const ring = settings.besideMouth_mm > 0 ? hangingOver(above, mouth, settings.besideMouth_mm) : null;
    const parts = [...new Set([...over.parts.keys(), ...(ring?.parts.keys() ?? [])])];
    const found = parts
      .map((part) => ({ part, over: over.parts.get(part), beside: ring?.parts.get(part) }))
      .map((f) => ({ ...f, covers: f.over?.share ?? 0, besides: f.beside?.share ?? 0 }))
      .filter((f) => f.covers > negligible || f.besides > negligible)
      .sort((a, b) => b.covers - a.covers || b.besides - a.besides || a.part - b.part);
    for (const { part, over: o, beside: b, covers, besides } of found) {
      const main = (covers > negligible ? o : b) as Hanging;
      const ids = [model.parts[part].id];
      const id = name(ids, main.at);
      const both = [o, b].filter((h) => h !== undefined);
      places.push({
        id,
        parts: ids,
        at_mm: main.at,
        bounds_mm: boxAround(both.flatMap((h) => [h.low, h.high])),
        mouth: mouth.id,
        mouthParts: [...mouth.parts].sort(),
        covers,
        beside: besides,
        height_mm: main.height,
      });
      const foot = [main.at[0], main.at[1], main.at[2] - main.height];
      drawings.set(id, {
        triangles: Float32Array.from([
          ...over.shares.triangles((kind) => kind === part + 1),
          ...(ring?.shares.triangles((kind) => kind === part + 1) ?? []),
        ]),
        // The way of a drop.
        lines: [Float32Array.from([...main.at, ...foot])],
      });
      for (const [t, height] of both.flatMap((h) => [...h.heights])) {
        field[t] = Number.isNaN(field[t]) ? height : Math.min(field[t], height);
      }
    }
  });
  return { measure: { mouths, places }, field, drawings, notes };
}
