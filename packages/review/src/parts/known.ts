/** What can be said of every part before anybody is asked. */
import type { Model } from '@coveline/model';
import type { Extent } from '../geometry/extent.ts';
import { extentsOf } from '../geometry/extent.ts';
import type { Hanging, Mouth } from '../geometry/mouth.ts';
import { hangingOver, mouthOf } from '../geometry/mouth.ts';
import { type Recognised, recognise } from '../names/recognise.ts';

export interface OpenMouth {
  readonly mouth: Mouth;
  /** What hangs above it, lowest first; containers and their lids are left out. */
  readonly above: readonly Hanging[];
}

export interface Known {
  readonly model: Model;
  readonly indexOf: ReadonlyMap<string, number>;
  readonly extents: readonly Extent[];
  readonly is: readonly (Recognised | null)[];
  /** Containers and their lids: they pass through and are no part of the machine. */
  readonly isPack: (part: number) => boolean;
  readonly mouths: readonly OpenMouth[];
}

/** What hangs higher than this above a mouth belongs to the room, not to the machine. */
const reach_mm = 2000;

export function knowledgeOf(model: Model): Known {
  const extents = extentsOf(model);
  const is = model.parts.map(recognise);
  const isPack = (p: number) =>
    is[p]?.from === 'name' && (is[p].noun === 'container' || is[p].noun === 'lid');
  const indexOf = new Map(model.parts.map((part, p) => [part.id, p]));
  const mouths: OpenMouth[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    if (!isPack(p) || is[p]?.noun !== 'container') continue;
    const mouth = mouthOf(p, extents[p]);
    if (isLidded(extents, is, mouth)) continue;
    mouths.push({ mouth, above: hangingOver(model, extents, mouth, reach_mm, isPack) });
  }
  return { model, indexOf, extents, is, isPack, mouths };
}

/** A lid sits on a mouth when its box covers the middle of the mouth, within 15 mm of the rim. */
function isLidded(extents: readonly Extent[], is: readonly (Recognised | null)[], { at_mm }: Mouth): boolean {
  return extents.some(
    ({ low, high }, p) =>
      is[p]?.noun === 'lid' &&
      [0, 1].every((i) => low[i] < at_mm[i] && high[i] > at_mm[i]) &&
      low[2] < at_mm[2] + 15 &&
      high[2] > at_mm[2] - 15,
  );
}
