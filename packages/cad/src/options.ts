import type { LengthUnit } from '@coveline/model';

export interface ReadOptions {
  /** Unit of files that do not state one (STL, OBJ); millimetres by default. Files that state a unit keep theirs. */
  readonly unit?: LengthUnit;
  /** Largest distance between a curved CAD face and its triangles, mm; 0.1 by default. */
  readonly deviation_mm?: number;
  /** Largest angle between neighbouring triangles of a curved CAD face, radians; 0.35 (20 degrees) by default. */
  readonly angle_rad?: number;
  /** Called as the work goes on, with a stage in words and how much of it is done, 0 to 1. */
  readonly onProgress?: (stage: string, done: number) => void;
  /** Address of the CAD kernel's WebAssembly file, for browsers; by default the file beside the kernel's code. */
  readonly wasmUrl?: string;
}

export const defaultDeviation_mm = 0.1;
export const defaultAngle_rad = 0.35;

export const mmPerUnit: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

export const unitWords: Readonly<Record<LengthUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
};
