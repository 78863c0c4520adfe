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
  const indexOf = new Map(model.parts.map((part, p) => [part.id, p]));
  const named = (p: number) => (is[p]?.from === 'name' ? is[p].noun : undefined);
  const containers = model.parts.flatMap((_, p) => (named(p) === 'container' ? [p] : []));
  const mouths = containers.map((p) => mouthOf(model, p));
  // A lid of a hopper is a part of the machine; one that lies on a container, or has the shape of one that does, is not.
  const lidShapes = new Set<number>();
  const lidded = new Set<number>();
  for (let p = 0; p < model.parts.length; p++) {
    if (named(p) !== 'lid') continue;
    for (const mouth of mouths.filter((m) => liesOn(extents[p], m))) {
      lidShapes.add(model.parts[p].shape);
      lidded.add(mouth.part);
    }
  }
  const isPack = (p: number) =>
    named(p) === 'container' || (named(p) === 'lid' && lidShapes.has(model.parts[p].shape));
  return {
    model,
    indexOf,
    extents,
    is,
    isPack,
    mouths: mouths
      .filter((m) => !lidded.has(m.part))
      .map((mouth) => openMouth(mouth, () => hangingOver(model, extents, mouth, reach_mm, isPack))),
  };
}

/** Not everybody who asks for mouths asks what hangs above them, and that takes far longer. */
function openMouth(mouth: Mouth, look: () => readonly Hanging[]): OpenMouth {
  let above: readonly Hanging[] | undefined;
  return {
    mouth,
    get above() {
      above ??= look();
      return above;
    },
  };
}

/** Its box covers the middle of the mouth, within 15 mm of the rim. */
function liesOn({ low, high }: Extent, { at_mm }: Mouth): boolean {
  return (
    [0, 1].every((i) => low[i] < at_mm[i] && high[i] > at_mm[i]) &&
    low[2] < at_mm[2] + 15 &&
    high[2] > at_mm[2] - 15
  );
}
