/** A closed surface, wound counter-clockwise seen from the air: what the exact method works on. */
export interface Solid {
  /** Three coordinates per vertex, mm, the third one up. */
  readonly positions: Float64Array;
  /** Three vertex indices per triangle; vertices are shared. */
  readonly triangles: Uint32Array;
}

/**
 * Union of closed solids in one frame. Throws where one of them is not a closed manifold; the message says which
 * rule it breaks.
 */
export type Union = (solids: readonly Solid[]) => Solid;
