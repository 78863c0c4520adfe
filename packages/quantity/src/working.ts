/** How a number came about, so that a reader can redo it by hand. */

export interface WorkingValue {
  readonly symbol: string;
  readonly name: string;
  readonly value: number;
  /** Unit as this package writes it; "1" for a pure number. */
  readonly unit: string;
  /** Where an input comes from: "measured on the model", "brief", "IAPWS R1-76 (2014)". */
  readonly from?: string;
  /**
   * What the number stands for, in words: a verdict, or the values of a list or the start of a file, of which `value`
   * is then the length.
   */
  readonly text?: string;
}

export interface Working {
  /** What was calculated, in words. */
  readonly title: string;
  readonly inputs: readonly WorkingValue[];
  /** Plain-text equations in the order in which they are used. */
  readonly formula: readonly string[];
  readonly steps: readonly WorkingValue[];
  readonly result: WorkingValue;
  readonly source: string;
  /** Range in which the formula holds, in words. */
  readonly validity: string;
  /** Out of range, assumed, uncertain: one sentence each. */
  readonly warnings: readonly string[];
}
