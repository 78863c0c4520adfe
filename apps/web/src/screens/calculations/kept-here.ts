import type { KeptCalculation } from '@coveline/project';

/** A calculation that is kept with a machine. */
export interface KeptHere {
  readonly machine: { readonly id: string; readonly name: string };
  readonly calculation: KeptCalculation;
}
