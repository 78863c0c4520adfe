/** A circuit of pipes and pumps between junctions and points of fixed head. SI units. */

export interface Junction {
  readonly id: string;
  readonly elevation: number;
  /** Flow taken out, m3/s. */
  readonly demand: number;
}

/** A tank or reservoir: its head does not change. */
export interface FixedHead {
  readonly id: string;
  readonly head: number;
}

export interface Pipe {
  readonly kind: 'pipe';
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly length: number;
  readonly bore: number;
  readonly roughness: number;
  /** Sum of loss coefficients. */
  readonly minor: number;
  /** Lets flow pass from `from` to `to` only. */
  readonly oneWay: boolean;
}

/** Head gain H = shutOff - factor Q^exponent, m and m3/s. */
export interface Pump {
  readonly kind: 'pump';
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly shutOff: number;
  readonly factor: number;
  readonly exponent: number;
}

export type Link = Pipe | Pump;

export interface Network {
  readonly junctions: readonly Junction[];
  readonly fixed: readonly FixedHead[];
  readonly links: readonly Link[];
}
