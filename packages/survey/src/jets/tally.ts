import type { NozzleSet } from './nozzle-set.ts';

/** Sums over all pieces of the surface, mm2. */
export class Tally {
  seen_mm2 = 0;
  unseen_mm2 = 0;
  beyond_mm2 = 0;
  /** Per nozzle: area that it sees, the farthest point of it, and incidence (from head-on) times area. */
  readonly area: Float64Array;
  readonly farthest: Float64Array;
  readonly slant: Float64Array;
  /** Number of nozzles that see the triangle, over at least half of its counted area; NaN where nothing is counted. */
  readonly field: Float32Array;
  private readonly set: NozzleSet;
  /** Of the present triangle: area by nozzle, and all that counts. */
  private readonly here: Float64Array;
  private counted = 0;

  constructor(set: NozzleSet, triangles: number) {
    const n = set.nozzles.length;
    this.set = set;
    this.area = new Float64Array(n);
    this.farthest = new Float64Array(n);
    this.slant = new Float64Array(n);
    this.here = new Float64Array(n);
    this.field = new Float32Array(triangles).fill(Number.NaN);
  }

  /** A piece around xyz; `sees`: 1 for each nozzle that sees it. */
  addSeen(area: number, x: number, y: number, z: number, normal: Float64Array, sees: Uint8Array): void {
    this.seen_mm2 += area;
    this.counted += area;
    const { at } = this.set;
    for (let i = 0; i < sees.length; i++) {
      if (sees[i] === 0) continue;
      const dx = at[i * 3] - x;
      const dy = at[i * 3 + 1] - y;
      const dz = at[i * 3 + 2] - z;
      const far = Math.sqrt(dx * dx + dy * dy + dz * dz);
      const cosine = (dx * normal[0] + dy * normal[1] + dz * normal[2]) / (far || 1);
      this.area[i] += area;
      this.here[i] += area;
      this.slant[i] += area * Math.acos(Math.min(1, Math.max(0, cosine)));
      if (far > this.farthest[i]) this.farthest[i] = far;
    }
  }

  addUnseen(area: number): void {
    this.unseen_mm2 += area;
    this.counted += area;
  }

  addBeyond(area: number): void {
    this.beyond_mm2 += area;
  }

  endTriangle(triangle: number): void {
    let nozzles = 0;
    for (let i = 0; i < this.here.length; i++) {
      if (this.here[i] >= this.counted / 2) nozzles++;
      this.here[i] = 0;
    }
    this.field[triangle] = this.counted > 0 ? nozzles : Number.NaN;
    this.counted = 0;
  }
}
