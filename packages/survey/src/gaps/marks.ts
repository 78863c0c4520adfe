/**
 * Where something was seen, at every scale: cells of a size and its doubles. Asks cheaply whether anything was seen
 * within some distance; the answer may be yes for a cell beside the one that is meant, never a wrong no.
 */
export interface Marks {
  readonly cell_mm: number;
  readonly levels: readonly Set<number>[];
}

const levelCount = 16;

export function newMarks(cell_mm: number): Marks {
  return { cell_mm, levels: Array.from({ length: levelCount }, () => new Set<number>()) };
}

export function mark(marks: Marks, x: number, y: number, z: number): void {
  markNew(marks, x, y, z);
}

/** Marks a point, and says whether its smallest cell was unmarked before. */
export function markNew({ cell_mm, levels }: Marks, x: number, y: number, z: number): boolean {
  let size = cell_mm;
  for (const level of levels) {
    const key = cellKey(Math.floor(x / size), Math.floor(y / size), Math.floor(z / size));
    // Whoever marked this cell has marked the larger ones around it too.
    if (level.has(key)) return size > cell_mm;
    level.add(key);
    size *= 2;
  }
  return true;
}

/** Marks points all over a triangle, its nine coordinates from `i` on, no farther apart than the smallest cell. */
export function markTriangle(marks: Marks, c: readonly number[], i: number): void {
  const [ux, uy, uz] = [c[i + 3] - c[i], c[i + 4] - c[i + 1], c[i + 5] - c[i + 2]];
  const [vx, vy, vz] = [c[i + 6] - c[i], c[i + 7] - c[i + 1], c[i + 8] - c[i + 2]];
  const nu = Math.max(1, Math.ceil(Math.sqrt(ux * ux + uy * uy + uz * uz) / marks.cell_mm));
  const nv = Math.max(1, Math.ceil(Math.sqrt(vx * vx + vy * vy + vz * vz) / marks.cell_mm));
  for (let j = 0; j <= nu; j++) {
    const a = j / nu;
    for (let k = 0; k <= nv; k++) {
      const b = Math.min(k / nv, 1 - a);
      mark(marks, c[i] + a * ux + b * vx, c[i + 1] + a * uy + b * vy, c[i + 2] + a * uz + b * vz);
      if (k / nv >= 1 - a) break;
    }
  }
}

/** Whether anything was marked within `reach` mm of xyz, or a little farther. */
export function isMarked(
  { cell_mm, levels }: Marks,
  x: number,
  y: number,
  z: number,
  reach: number,
): boolean {
  const k = Math.min(levelCount - 1, Math.max(0, Math.ceil(Math.log2(reach / cell_mm))));
  const size = cell_mm * 2 ** k;
  const level = levels[k];
  const [x0, x1] = [Math.floor((x - reach) / size), Math.floor((x + reach) / size)];
  const [y0, y1] = [Math.floor((y - reach) / size), Math.floor((y + reach) / size)];
  const [z0, z1] = [Math.floor((z - reach) / size), Math.floor((z + reach) / size)];
  for (let cx = x0; cx <= x1; cx++)
    for (let cy = y0; cy <= y1; cy++)
      for (let cz = z0; cz <= z1; cz++) if (level.has(cellKey(cx, cy, cz))) return true;
  return false;
}

/** 17 bits of each index, exact within 65 536 cells of the origin and repeating beyond. */
function cellKey(x: number, y: number, z: number): number {
  return ((x & 0x1ffff) * 0x20000 + (y & 0x1ffff)) * 0x20000 + (z & 0x1ffff);
}
