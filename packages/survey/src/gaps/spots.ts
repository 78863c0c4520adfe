/** Points in cells, to find those near a place. */
export interface Spots {
  readonly cell_mm: number;
  readonly cells: Map<number, number[]>;
  readonly xyz: number[];
}

export function newSpots(cell_mm: number): Spots {
  return { cell_mm, cells: new Map(), xyz: [] };
}

/** Adds a point; points are numbered in the order in which they are added. */
export function addSpot({ cell_mm, cells, xyz }: Spots, x: number, y: number, z: number): void {
  const key = cellKey(Math.floor(x / cell_mm), Math.floor(y / cell_mm), Math.floor(z / cell_mm));
  const list = cells.get(key);
  if (list) list.push(xyz.length / 3);
  else cells.set(key, [xyz.length / 3]);
  xyz.push(x, y, z);
}

/** Calls `visit` with every point at most one cell width away, and its distance. */
export function visitSpots(
  { cell_mm, cells, xyz }: Spots,
  x: number,
  y: number,
  z: number,
  visit: (spot: number, distance_mm: number) => void,
): void {
  const [cx, cy, cz] = [Math.floor(x / cell_mm), Math.floor(y / cell_mm), Math.floor(z / cell_mm)];
  for (let i = cx - 1; i <= cx + 1; i++) {
    for (let j = cy - 1; j <= cy + 1; j++) {
      for (let k = cz - 1; k <= cz + 1; k++) {
        for (const s of cells.get(cellKey(i, j, k)) ?? []) {
          const d = Math.hypot(xyz[3 * s] - x, xyz[3 * s + 1] - y, xyz[3 * s + 2] - z);
          if (d <= cell_mm) visit(s, d);
        }
      }
    }
  }
}

/** 17 bits of each index; cells that far apart share a list, and the distance tells them apart. */
function cellKey(x: number, y: number, z: number): number {
  return ((x & 0x1ffff) * 0x20000 + (y & 0x1ffff)) * 0x20000 + (z & 0x1ffff);
}
