import type { Vec3 } from '@coveline/model';

/**
 * What stands around a machine and what happens in it, as far as shape alone does not tell: proposed by a review,
 * set by the user, kept in the project. Coordinates in mm in the frame that is surveyed (+Z up); directions of any
 * length but zero. A measure whose part of the site is empty says so in a note and finds nothing.
 */
export interface Site {
  /** Height of the floor; the lowest point of the model where absent. */
  readonly floor_mm?: number;
  /** Upright walls beside the machine, each by a point and the direction from the wall into the room. */
  readonly walls: readonly { readonly id: string; readonly at_mm: Vec3; readonly into: Vec3 }[];
  readonly access: readonly AccessSide[];
  readonly doors: readonly Door[];
  readonly mouths: readonly Mouth[];
  readonly filters: readonly FilterFace[];
  readonly nozzles: readonly Nozzle[];
  readonly drains: readonly { readonly id: string; readonly at_mm: Vec3; readonly diameter_mm: number }[];
  /** Tubes in which product or cleaning liquid flows by, so that branches off them are dead legs. */
  readonly mains: readonly { readonly id: string; readonly parts: readonly string[] }[];
}

/** A side on which a person can stand: everything beyond the box of the machine in this direction. */
export interface AccessSide {
  readonly id: string;
  readonly outward: Vec3;
}

/** Parts that swing away together. */
export interface Door {
  readonly id: string;
  readonly parts: readonly string[];
  readonly hinge: { readonly at_mm: Vec3; readonly axis: Vec3 };
}

/** An opening with product below it that air and whatever it carries can reach: an open jar, a hopper's rim. */
export interface Mouth {
  readonly id: string;
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  /** Out of the container, into the air. */
  readonly outward: Vec3;
  readonly radius_mm: number;
  /** Where it stands on its way from infeed to lid, s; 0 where there is no way. */
  readonly time_s?: number;
}

/** The face out of which filtered air flows, a rectangle. */
export interface FilterFace {
  readonly id: string;
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  /** The way the air flows. */
  readonly flow: Vec3;
  /** Half of the sides: the rectangle is at + a*across + b*along, a and b from -1 to 1. */
  readonly across_mm: Vec3;
  readonly along_mm: Vec3;
  readonly velocity_mPerS?: number;
}

export interface Nozzle {
  readonly id: string;
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  readonly direction: Vec3;
  /** Full angle of the cone; 360 sprays everywhere. */
  readonly cone_deg: number;
  /** Farther than this the jet does nothing. */
  readonly range_mm: number;
}

export const emptySite: Site = {
  walls: [],
  access: [],
  doors: [],
  mouths: [],
  filters: [],
  nozzles: [],
  drains: [],
  mains: [],
};
