/** What could be done about a finding, with the effect that can be told before anything is changed. */
import type { Remedy } from '@coveline/catalogue';
import type { Working } from '@coveline/quantity';

/** One number as it is and as it would be. */
export interface Effect {
  readonly label: string;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  /** How `after` came about. */
  readonly working: Working;
}

export interface Option {
  /** A whole sentence; it is what a decision to change takes over. */
  readonly text: string;
  readonly cost: Remedy['cost'];
  /** Empty: nothing can be told of it before it is drawn. */
  readonly effects: readonly Effect[];
  readonly caveats: readonly string[];
}
