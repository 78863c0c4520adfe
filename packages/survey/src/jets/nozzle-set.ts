import type { Model } from '@coveline/model';
import type { Nozzle } from '../site.ts';

/** Nozzles as arrays, one entry each. */
export interface NozzleSet {
  readonly nozzles: readonly Nozzle[];
  /** xyz, mm. */
  readonly at: Float64Array;
  /** Unit vectors. */
  readonly direction: Float64Array;
  /** Cosine of half the cone; below -1 for all round. */
  readonly cosine: Float64Array;
  /** mm2 */
  readonly rangeSquared: Float64Array;
  /** Parts that the nozzle consists of: they do not shade it, and it does not wet them. */
  readonly own: readonly ReadonlySet<number>[];
  /** Nozzles that were left out, and why; one sentence each. */
  readonly notes: readonly string[];
}

export function nozzleSet(model: Model, given: readonly Nozzle[]): NozzleSet {
  const notes: string[] = [];
  const nozzles = given.filter((nozzle) => {
    const fault = faultOf(nozzle);
    if (fault) notes.push(`Jet reach: the nozzle "${nozzle.id}" is left out, because ${fault}.`);
    return !fault;
  });
  const index = new Map(model.parts.map(({ id }, p) => [id, p]));
  return {
    nozzles,
    at: Float64Array.from(nozzles.flatMap((n) => n.at_mm)),
    direction: Float64Array.from(
      nozzles.flatMap(({ direction }) => direction.map((c) => c / (Math.hypot(...direction) || 1))),
    ),
    cosine: Float64Array.from(nozzles, (n) =>
      n.cone_deg >= 360 ? -2 : Math.cos((n.cone_deg * Math.PI) / 360),
    ),
    rangeSquared: Float64Array.from(nozzles, (n) => n.range_mm ** 2),
    own: nozzles.map(({ parts }) => new Set(parts.map((id) => index.get(id)).filter((p) => p !== undefined))),
    notes,
  };
}

function faultOf({ at_mm, direction, cone_deg, range_mm }: Nozzle): string | null {
  if (!at_mm.every(Number.isFinite)) return 'its position is no number';
  if (!(cone_deg > 0)) return `its cone of ${cone_deg} degrees has no opening`;
  if (cone_deg < 360 && !(Math.hypot(...direction) > 0)) return 'its direction has no length';
  if (!(range_mm > 0)) return `its range of ${range_mm} mm is not above 0`;
  return null;
}
