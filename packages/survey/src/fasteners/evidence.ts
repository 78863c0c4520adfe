/** Which of the things that a shape's geometry allows count for a part, by the evidence beside it. */
import type { Recognised } from '../result.ts';
import { type Hint, hintOf } from './hint.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';

/** So many parts of one shape are bought by the dozen rather than made for the machine (common practice). */
const leastRepeated = 4;
/** A cylinder has the diameter that a name gives where it differs by less than this, mm. */
const sameDiameter_mm = 0.3;

/** `copies`: parts of the machine with the same shape. */
export function fastenersOfPart(local: LocalFasteners, name: string, copies: number): LocalFasteners {
  const hint = hintOf(name);
  const heads = local.heads.flatMap((head) => {
    if (!head.weak) return [head];
    const by = weakly(head, hint, copies);
    return by ? [{ ...head, by, caveats: [...head.caveats, reasonOf(by, copies)] }] : [];
  });
  const threads = local.threads.flatMap((thread) => {
    if (!thread.weak) return [thread];
    return isNamedThread(thread, hint)
      ? [
          {
            ...thread,
            by: 'name' as const,
            caveats: ['It is a plain cylinder; that it is a thread is taken from its name.'],
          },
        ]
      : [];
  });
  return { heads, threads };
}

function weakly(head: LocalHead, hint: Hint, copies: number): Recognised | undefined {
  // Machines repeat stepped pins as they repeat screws.
  const mayRepeat = head.kind !== 'cylinder' && head.kind !== 'dome';
  if (mayRepeat && copies >= leastRepeated) return 'repeated';
  const wanted = head.kind === 'domedNut' ? 'nut' : 'bolt';
  return hint.what === wanted ? 'name' : undefined;
}

const reasonOf = (by: Recognised, copies: number) =>
  by === 'repeated'
    ? `That it is a fastener is taken from its shape and from ${copies} parts that are the same.`
    : 'That it is a fastener is taken from its shape and its name.';

/** A name that speaks of a bolt or a threaded rod; where it gives a size, the cylinder must have it. */
function isNamedThread({ radius_mm }: LocalThread, { what, diameter_mm }: Hint): boolean {
  if (diameter_mm !== undefined && Math.abs(2 * radius_mm - diameter_mm) > sameDiameter_mm) return false;
  return what === 'rod' || (what === 'bolt' && diameter_mm !== undefined);
}

/** A part that is called a fastener though its geometry shows none. */
export function isFastenerByNameOnly(found: LocalFasteners, name: string): boolean {
  const { what } = hintOf(name);
  return found.heads.length === 0 && found.threads.length === 0 && (what === 'bolt' || what === 'nut');
}
