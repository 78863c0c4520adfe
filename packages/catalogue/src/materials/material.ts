/** How rows of the material table are written. */
import { half, memory, practice, seen } from '../row.ts';
import type { Citation, Material, MaterialFamily } from '../types.ts';

export { half, memory, practice, seen };

interface MaterialRow {
  readonly id: string;
  readonly name: string;
  readonly designations: readonly string[];
  readonly hints: readonly string[];
  readonly density_kg_m3?: number;
  readonly foodContact: Material['foodContact'];
  readonly maxTemperature_degC?: number;
  readonly remarks: string;
  readonly from: Citation;
}

export function materialsOf(family: MaterialFamily, rows: readonly MaterialRow[]): readonly Material[] {
  return rows.map(({ hints, from, ...row }) => ({ ...row, family, nameHints: hints, citation: from }));
}
