/** What hangs over the open mouths, by the survey. */
import type { Overhang, SkyView } from '@coveline/survey';
import type { Scene } from '../scene.ts';

/** A part over one mouth. */
export interface OverMouth {
  /** Indices of the part and of the container that the mouth belongs to. */
  readonly part: number;
  readonly container: number;
  /** Share of the mouth into which it can drop, and its least height above the mouth, mm. */
  readonly share: number;
  readonly height_mm: number;
  /** Height of its lowest point, mm. */
  readonly z: number;
  /** Share of the mouth's air that it cuts off from the filter, where first air was looked at. */
  readonly hides?: number;
  readonly place?: Overhang | SkyView;
}

export interface OverMouths {
  readonly over: readonly OverMouth[];
  /** Number of mouths that were looked up from. */
  readonly mouths: number;
  readonly basis: string;
}

/** What hangs higher than this above a mouth belongs to the room, not to the machine. */
const reach_mm = 2000;
/** What lies flush on the rim belongs to the mouth: lids, seals. */
const onRim_mm = 1;
const negligible = 5e-4;

export function overMouths(scene: Scene): OverMouths {
  const { overhead } = scene.survey.measures;
  // Surveys made before the measure: as the names and the rims of the containers tell.
  return overhead ? surveyed(scene, overhead) : byNames(scene);
}

function surveyed(
  scene: Scene,
  { places, mouths }: { readonly mouths: number; readonly places: readonly Overhang[] },
): OverMouths {
  const { indexOf, isPack } = scene.known;
  const views = new Map(scene.survey.measures.openSky?.places.map((v) => [v.mouth, v]) ?? []);
  const over: OverMouth[] = [];
  const done = new Set<string>();
  for (const place of places) {
    const part = indexOf.get(place.parts[0]);
    const container = indexOf.get(place.mouthParts[0]);
    if (part === undefined || container === undefined || isPack(part)) continue;
    const { covers: share, height_mm } = place;
    if (share <= negligible || height_mm < onRim_mm || height_mm > reach_mm) continue;
    const view = views.get(place.mouth);
    const hides = view?.interruptedBy.find((i) => i.part === place.parts[0])?.share;
    done.add(`${place.mouth}\n${place.parts[0]}`);
    over.push({
      part,
      container,
      share,
      height_mm,
      z: place.at_mm[2],
      place,
      ...(hides !== undefined && { hides }),
    });
  }
  for (const view of views.values()) {
    for (const { part: id, share } of view.interruptedBy) {
      const part = indexOf.get(id);
      const container = indexOf.get(view.parts[0]);
      if (part === undefined || container === undefined || isPack(part)) continue;
      if (done.has(`${view.mouth}\n${id}`) || share <= negligible) continue;
      // In the way of air that comes aslant, though not straight above.
      const z = scene.known.extents[part].low[2];
      const height_mm = z - view.at_mm[2];
      if (height_mm < onRim_mm) continue;
      over.push({ part, container, share: 0, height_mm, z, hides: share, place: view });
    }
  }
  const several = `${mouths} open ${mouths === 1 ? 'mouth' : 'mouths'}`;
  return {
    over,
    mouths,
    basis:
      mouths === 0
        ? 'No open mouth is set or proposed, so nothing was looked for above one'
        : `Looked straight up from ${several}`,
  };
}

function byNames({ known }: Scene): OverMouths {
  const count = known.mouths.length;
  return {
    over: known.mouths.flatMap(({ mouth, above }) =>
      above.map(({ part, share, height_mm }) => ({
        part,
        container: mouth.part,
        share,
        height_mm,
        z: mouth.at_mm[2] + height_mm,
      })),
    ),
    mouths: count,
    basis:
      count === 0
        ? 'No part is named as an open container, so nothing was looked for above one'
        : `Looked straight up from ${count} open ${count === 1 ? 'container' : 'containers'}, known by their names`,
  };
}
