/**
 * All triangles of a model in one frame that is turned about the vertical: u, v horizontal, z up, mm.
 */
import { type Model, placedPositions, type Vec3 } from '@coveline/model';
import { type SoundShape, soundShape } from './sound.ts';
import { turnAgainstWalls } from './turn.ts';

export interface Soup {
  /** u, v, z per vertex. */
  readonly uvz: Float64Array;
  /** Three vertex indices per triangle, wound counter-clockwise seen from the air. */
  readonly triangles: Uint32Array;
  /** Index of the part, per triangle. */
  readonly part: Uint32Array;
  /** 1 where the triangle belongs to an open sheet: it stops liquid but bounds no material. */
  readonly sheet: Uint8Array;
  /** Index of the triangle in the model (parts in order, triangles in shape order), or -1 for a cap. */
  readonly source: Int32Array;
  /** Per part: its first triangle in the model. */
  readonly firstOfPart: Uint32Array;
  readonly low: Vec3;
  readonly high: Vec3;
  /** Cosine and sine of the turn. */
  readonly turn: readonly [number, number];
  /** What was repaired or taken as a sheet, one sentence each. */
  readonly notes: readonly string[];
}

export function soupOf(model: Model): Soup {
  const used = new Set(model.parts.map((part) => part.shape));
  const sound = model.shapes.map((shape, s) => (used.has(s) ? soundShape(shape) : undefined)) as SoundShape[];
  let vertices = 0;
  let count = 0;
  for (const { shape } of model.parts) {
    vertices += model.shapes[shape].positions.length / 3;
    count += sound[shape].triangles.length / 3;
  }
  const uvz = new Float64Array(vertices * 3);
  const triangles = new Uint32Array(count * 3);
  const part = new Uint32Array(count);
  const sheet = new Uint8Array(count);
  const source = new Int32Array(count).fill(-1);
  const firstOfPart = new Uint32Array(model.parts.length);
  let v = 0;
  let t = 0;
  let s = 0;
  for (let p = 0; p < model.parts.length; p++) {
    const { shape } = model.parts[p];
    const own = sound[shape];
    const placed = placedPositions(model, p);
    const bad = placed.findIndex((c) => !Number.isFinite(c));
    if (bad >= 0) {
      throw new Error(
        `Part "${model.parts[p].id}": vertex ${Math.floor(bad / 3)} has a coordinate that is not a finite number; read the model again or repair it.`,
      );
    }
    uvz.set(placed, v * 3);
    for (let c = 0; c < own.triangles.length; c++) triangles[t * 3 + c] = own.triangles[c] + v;
    const n = own.triangles.length / 3;
    part.fill(p, t, t + n);
    sheet.set(own.sheet, t);
    const given = model.shapes[shape].triangles.length / 3;
    firstOfPart[p] = s;
    for (let k = 0; k < given; k++) source[t + k] = s + k;
    s += given;
    t += n;
    v += model.shapes[shape].positions.length / 3;
  }
  const angle = turnAgainstWalls(uvz, triangles);
  const turn = [Math.cos(angle), Math.sin(angle)] as const;
  const { low, high } = turnAbout(uvz, turn);
  return {
    uvz,
    triangles,
    part,
    sheet,
    source,
    firstOfPart,
    low,
    high,
    turn,
    notes: soundnessNotes(model, sound),
  };
}

/** Turns xyz to uvz in place and returns the bounds. */
function turnAbout(xyz: Float64Array, [cos, sin]: readonly [number, number]): { low: Vec3; high: Vec3 } {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < xyz.length; i += 3) {
    const x = xyz[i];
    const y = xyz[i + 1];
    xyz[i] = cos * x + sin * y;
    xyz[i + 1] = cos * y - sin * x;
    for (let k = 0; k < 3; k++) {
      const c = xyz[i + k];
      if (c < low[k]) low[k] = c;
      if (c > high[k]) high[k] = c;
    }
  }
  return xyz.length > 0 ? { low, high } : { low: [0, 0, 0], high: [0, 0, 0] };
}

/** Back from the turned frame to that of the model. */
export function fromTurned({ turn: [cos, sin] }: Pick<Soup, 'turn'>, u: number, v: number, z: number): Vec3 {
  return [cos * u - sin * v, sin * u + cos * v, z];
}

function soundnessNotes(model: Model, sound: readonly (SoundShape | undefined)[]): string[] {
  const told: readonly [
    keyof SoundShape & ('inverted' | 'reoriented' | 'zipped' | 'capped' | 'sheets'),
    string,
  ][] = [
    ['inverted', 'inside out and was turned'],
    ['reoriented', 'wound inconsistently and was made consistent'],
    ['zipped', 'cracked by less than parts that touch may be apart, and was closed'],
    ['capped', 'closed but for small holes, which were capped'],
    ['sheets', 'open and counts as a thin sheet without an inside'],
  ];
  return told.flatMap(([key, what]) => {
    const names = model.parts.filter(({ shape }) => (sound[shape]?.[key] ?? 0) > 0).map(({ id }) => id);
    if (names.length === 0) return [];
    const shown = names
      .slice(0, 5)
      .map((n) => `"${n}"`)
      .join(', ');
    const more = names.length > 5 ? ` and ${names.length - 5} more` : '';
    return [`Surface of ${shown}${more}: at least one shell is ${what}.`];
  });
}
