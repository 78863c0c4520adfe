/** Everything that a revision may change, and the measures that several sub-assemblies share. Millimetres, degrees. */

export interface Parameters {
  readonly revision: 'A' | 'B';
  /** From the bench to the underside of the frame. */
  readonly clearance: number;
  /** Fall of the jar guide plate towards the operator. */
  readonly jarPlateTilt_deg: number;
  /** Air between the two lapped sheets of the back wall; null where they are one welded sheet. */
  readonly lapGap: number | null;
  /** Inside radius of the four upright corners of the hopper. */
  readonly hopperCornerRadius: number;
  readonly sensorBracket: boolean;
}

export const revisionA: Parameters = {
  revision: 'A',
  clearance: 80,
  jarPlateTilt_deg: 0,
  lapGap: 0.3,
  hopperCornerRadius: 1,
  sensorBracket: false,
};

/** Mended: plate tilted, legs longer, back wall welded, hopper corners rounded. New: a sensor on an upturned channel. */
export const revisionB: Parameters = {
  ...revisionA,
  revision: 'B',
  clearance: 160,
  jarPlateTilt_deg: 6,
  lapGap: null,
  hopperCornerRadius: 6,
  sensorBracket: true,
};

/** Middle of the jar lane, towards the operator is -y. */
export const laneY = -80;
/** Underside of a standing jar. */
export const jarFloor = 632;

/** Upper face of the deck at y = 0, and its fall towards the operator. */
export const deck = {
  z: 560,
  slope_deg: 3.5,
  thickness: 3,
  front: -285,
  back: 300,
  halfWidth: 560,
} as const;

export const backWall = {
  y: 240,
  thickness: 2,
  bottom: 600,
  top: 1210,
  halfWidth: 562,
  overlap: 30,
} as const;
export const hoodBottom = 1210;

/** A sphere's cap pressed into the jar guide plate: it keeps about 38 mL. */
export const dish = { radius: 107.3, depth: 2.1 } as const;
export const jarPlate = { z: 612, length: 420, width: 240, thickness: 3, x: 0 } as const;

export const rail = { size: 50, wall: 2, y: 255, halfLength: 560 } as const;
export const upright = { x: 520, outside: 48.3, inside: 44.3 } as const;

export const drainTray = {
  length: 900,
  width: 80,
  height: 35,
  wall: 2,
  collar: 4,
  drain: 25,
  collarWall: 2,
} as const;

/** Capped sampling branch of the product line: from the wall of the main to the face of the cap. */
export const branch = { reach: 65 } as const;

export const blindHole = { diameter: 6.8, depth: 12, count: 4 } as const;
export const toolShelf = { length: 180, width: 100, thickness: 3, z: 800 } as const;
export const sensorChannel = { length: 120, width: 30, height: 20, wall: 2 } as const;
export const crossBar = { width: 40, height: 20, aboveMouth: 155, from: -100, to: 160 } as const;

/** Front face of the back wall at x: its right half lies behind the left one where the two are lapped. */
export function wallFront(p: Parameters, x: number): number {
  if (p.lapGap === null || x < 0) return backWall.y;
  return backWall.y + backWall.thickness + p.lapGap;
}

export function deckZ(y: number): number {
  return deck.z + y * Math.tan((deck.slope_deg * Math.PI) / 180);
}
