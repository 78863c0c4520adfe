/** Defaults by roughness: ISO 4288:1996, ISO 21920-3:2021 (secondary copy; short cut-off from memory). mm and um. */
export interface CutoffRow {
  /** Rows hold for Ra above the bound of the row before up to this one. */
  readonly raUpTo: number;
  readonly rzUpTo: number;
  readonly cutoff_mm: number;
  readonly evaluation_mm: number;
  readonly short_um: number;
}

export const cutoffs: readonly CutoffRow[] = [
  { raUpTo: 0.02, rzUpTo: 0.16, cutoff_mm: 0.08, evaluation_mm: 0.4, short_um: 2.5 },
  { raUpTo: 0.1, rzUpTo: 0.8, cutoff_mm: 0.25, evaluation_mm: 1.25, short_um: 2.5 },
  { raUpTo: 2, rzUpTo: 16, cutoff_mm: 0.8, evaluation_mm: 4, short_um: 2.5 },
  { raUpTo: 10, rzUpTo: 80, cutoff_mm: 2.5, evaluation_mm: 12.5, short_um: 8 },
  {
    raUpTo: Number.POSITIVE_INFINITY,
    rzUpTo: Number.POSITIVE_INFINITY,
    cutoff_mm: 8,
    evaluation_mm: 40,
    short_um: 25,
  },
];

export function cutoffForRa(ra_um: number): CutoffRow {
  return cutoffs.find((row) => ra_um <= row.raUpTo) ?? cutoffs[cutoffs.length - 1];
}
