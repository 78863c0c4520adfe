import type { Model, Vec3 } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, SkyView, SurveySettings } from '../result.ts';
import type { FilterFace, Mouth, Site } from '../site.ts';
import { step } from '../stopped.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import { type Tree, treeOf } from '../tree/tree.ts';
import { boxAround, circle, divideMouth, mouthFault, type Shares } from './disc.ts';
import { filterFault, landsOn, type Stream, streamsOf } from './filter-face.ts';
import { dot, unit } from './vector.ts';

/** Kinds of a point of a mouth; a part that interrupts has its index plus `first`. */
const open = 0;
const past = 1;
const first = 2;
/** Less of a mouth than this is a matter of rounding. */
const negligible = 5e-4;

/**
 * How much of the air that comes to each mouth comes straight from a filter face, and what is in its way (shares 0 to
 * 1, mm, s). Rays run against the flow from the points of the mouth's disc, its rim included; what belongs to the
 * mouth or to the filter is not in the way. Straight rays, not flow.
 */
export function measureOpenSky(
  model: Model,
  settings: SurveySettings,
  site: Pick<Site, 'mouths' | 'filters'>,
  control: Control = {},
): MeasureOutcome<'openSky'> {
  const tree = treeOf(model);
  const field = new Float32Array(tree.start[model.parts.length]).fill(Number.NaN);
  const drawings = new Map<string, Drawing>();
  const notes: string[] = [];
  const usable = <T extends { readonly id: string }>(
    what: string,
    all: readonly T[],
    fault: (one: T) => string | null,
  ) =>
    all.filter((one) => {
      const why = fault(one);
      if (why) notes.push(`First air: the ${what} "${one.id}" is left out, because ${why}.`);
      return !why;
    });
  const mouths = usable('mouth', site.mouths, mouthFault);
  const filters = usable('filter face', site.filters, filterFault);
  if (mouths.length === 0) notes.push('First air: no mouth is given, so nothing was looked for.');
  else if (filters.length === 0) notes.push('First air: no filter face is given, so nothing was looked for.');
  const streams = streamsOf(filters);
  const name = placeNamer('sky');
  const indexOf = new Map(model.parts.map(({ id }, p) => [id, p]));
  const places = (filters.length === 0 ? [] : mouths).map((mouth, n): SkyView => {
    step(control, 'first air', n / mouths.length);
    const stream = streamOf(mouth, streams);
    const shares = sharesOf(tree, settings, mouth, stream, indexOf);
    const place = told(model, mouth, stream, shares, name);
    drawings.set(place.id, {
      triangles: shares.triangles((kind) => kind >= first),
      lines: [Float32Array.from(circle(mouth, mouth.radius_mm).flat())],
    });
    for (const id of mouth.parts) {
      const p = indexOf.get(id);
      if (p === undefined) continue;
      for (let t = tree.start[p]; t < tree.start[p + 1]; t++) {
        field[t] = Number.isNaN(field[t]) ? place.open : Math.min(field[t], place.open);
      }
    }
    return place;
  });
  return { measure: { places }, field, drawings, notes };
}

/** The stream in which most of the mouth's rim and middle lies, what stands in it left aside. */
function streamOf(mouth: Mouth, streams: readonly Stream[]): Stream {
  const points = [...circle(mouth, mouth.radius_mm), mouth.at_mm];
  const reached = (s: Stream) => points.filter((p) => landing(s, p) !== null).length;
  return streams.reduce((best, s) => (reached(s) > reached(best) ? s : best));
}

function landing({ upstream, faces }: Stream, from: Vec3): { t: number; face: FilterFace } | null {
  let nearest: { t: number; face: FilterFace } | null = null;
  for (const face of faces) {
    const t = landsOn(face, from, upstream);
    if (t !== null && (!nearest || t < nearest.t)) nearest = { t, face };
  }
  return nearest;
}

const ray = newRay();
const hit = newHit();

function sharesOf(
  tree: Tree,
  { contact_mm }: SurveySettings,
  mouth: Mouth,
  stream: Stream,
  indexOf: ReadonlyMap<string, number>,
): Shares {
  const passed = new Set(
    [...mouth.parts, ...stream.faces.flatMap(({ parts }) => parts)].map((id) => indexOf.get(id)),
  );
  const kind = (x: number, y: number, z: number): number => {
    const land = landing(stream, [x, y, z]);
    if (!land) return past;
    ray.ox = x;
    ray.oy = y;
    ray.oz = z;
    [ray.dx, ray.dy, ray.dz] = stream.upstream;
    // What lies on the rim counts.
    ray.tMin = -2 * contact_mm;
    ray.tMax = land.t;
    while (firstAlong(tree, ray, hit)) {
      if (!passed.has(hit.part)) return hit.part + first;
      ray.tMin = hit.t + 1e-6;
    }
    return open;
  };
  return divideMouth(mouth, null, { kind, middle: kind });
}

function told(
  model: Model,
  mouth: Mouth,
  stream: Stream,
  { of }: Shares,
  name: ReturnType<typeof placeNamer>,
): SkyView {
  const parts = [...mouth.parts].sort();
  const rim = circle(mouth, mouth.radius_mm);
  const land = [mouth.at_mm, ...rim].map((p) => landing(stream, p)).find((l) => l !== null);
  const speed = land?.face.velocity_mPerS;
  const share = (kind: number) => of.get(kind) ?? 0;
  const caveats: string[] = [];
  if (!land) caveats.push('The mouth stands in the stream of no filter face.');
  else if (share(past) > negligible) {
    caveats.push(
      `${(share(past) * 100).toFixed(1)} % of the mouth stands beside the stream of the filter faces.`,
    );
  }
  const facing = dot(unit(mouth.outward), stream.upstream);
  if (facing < 0) caveats.push('The mouth faces away from the filter: no clean air falls into it.');
  else if (facing < slanting) {
    caveats.push('The air flows along the mouth: only what stands in the very plane of its rim is seen.');
  }
  return {
    id: name(parts, mouth.at_mm),
    parts,
    at_mm: mouth.at_mm,
    bounds_mm: boxAround(rim),
    mouth: mouth.id,
    open: share(open),
    past: share(past),
    ...(land && { distance_mm: land.t }),
    ...(land && speed !== undefined && speed > 0 && { transit_s: land.t / 1000 / speed }),
    interruptedBy: [...of]
      .filter(([kind, s]) => kind >= first && s > negligible)
      .map(([kind, s]) => ({ part: model.parts[kind - first].id, share: s }))
      .sort((a, b) => b.share - a.share || (a.part < b.part ? -1 : 1)),
    ...(caveats.length > 0 && { caveats }),
  };
}

/** Sine of the angle below which a stream is said to run along a mouth: 5 degrees. */
const slanting = Math.sin((5 * Math.PI) / 180);
