import type { Vec3 } from '@coveline/model';

/**
 * A lattice of cubic cells around a machine. Cell number: (k * ny + j) * nx + i. All coordinates of this folder are
 * counted from the lattice's corner, mm, so that single precision is enough for them.
 */
export interface Lattice {
  /** Lowest corner, in the frame of the model. */
  readonly corner: Vec3;
  readonly pitch: number;
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly cells: number;
}

/** About 30 bytes a cell and measure: 100 MB, and as many million steps as a survey has time for. */
const mostCells = 3_000_000;
/** A small part gets at least about this many: the resolution follows the size. */
const leastCells = 200_000;

/**
 * The cells between `low` and `high`, `asked_mm` wide, narrower for a small machine and wider for one so large that
 * the cells would be too many.
 */
export function latticeBetween(low: Vec3, high: Vec3, asked_mm: number): Lattice {
  const size = low.map((l, k) => high[k] - l);
  const volume = size[0] * size[1] * size[2];
  const pitch = Math.max(Math.min(asked_mm, Math.cbrt(volume / leastCells)), Math.cbrt(volume / mostCells));
  const [nx, ny, nz] = size.map((s) => Math.max(3, Math.ceil(s / pitch)));
  const [x, y, z] = low.map((l, k) => l - ([nx, ny, nz][k] * pitch - size[k]) / 2);
  return { corner: [x, y, z], pitch, nx, ny, nz, cells: nx * ny * nz };
}

/** Number of the cell that holds the point, -1 outside the lattice. */
export function cellAt({ pitch, nx, ny, nz }: Lattice, x: number, y: number, z: number): number {
  const i = Math.floor(x / pitch);
  const j = Math.floor(y / pitch);
  const k = Math.floor(z / pitch);
  if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) return -1;
  return (k * ny + j) * nx + i;
}

/** Number of the cell's neighbour to side 0 to 5 (-x, +x, -y, +y, -z, +z), -1 at the border. */
export function beside({ nx, ny, nz }: Lattice, cell: number, side: number): number {
  const i = cell % nx;
  const row = (cell / nx) | 0;
  switch (side) {
    case 0:
      return i > 0 ? cell - 1 : -1;
    case 1:
      return i < nx - 1 ? cell + 1 : -1;
    case 2:
      return row % ny > 0 ? cell - nx : -1;
    case 3:
      return row % ny < ny - 1 ? cell + nx : -1;
    case 4:
      return row >= ny ? cell - nx * ny : -1;
    default:
      return row < ny * (nz - 1) ? cell + nx * ny : -1;
  }
}

/** Writes the six neighbours of a cell to `out`, in the order of `beside`; -1 beyond the border. */
export function besides({ nx, ny, nz }: Lattice, cell: number, out: Int32Array): void {
  const row = (cell / nx) | 0;
  const i = cell - row * nx;
  const k = (row / ny) | 0;
  const j = row - k * ny;
  const layer = nx * ny;
  out[0] = i > 0 ? cell - 1 : -1;
  out[1] = i < nx - 1 ? cell + 1 : -1;
  out[2] = j > 0 ? cell - nx : -1;
  out[3] = j < ny - 1 ? cell + nx : -1;
  out[4] = k > 0 ? cell - layer : -1;
  out[5] = k < nz - 1 ? cell + layer : -1;
}

/** Calls `visit` with the cells at most one away along each axis, the cell itself among them. */
export function around({ nx, ny, nz }: Lattice, cell: number, visit: (cell: number) => void): void {
  const i = cell % nx;
  const row = (cell / nx) | 0;
  const j = row % ny;
  const k = (row / ny) | 0;
  for (let c = Math.max(0, k - 1); c <= Math.min(nz - 1, k + 1); c++) {
    for (let b = Math.max(0, j - 1); b <= Math.min(ny - 1, j + 1); b++) {
      for (let a = Math.max(0, i - 1); a <= Math.min(nx - 1, i + 1); a++) visit((c * ny + b) * nx + a);
    }
  }
}

/** Middle of a cell along each axis. */
export function middleX({ pitch, nx }: Lattice, cell: number): number {
  return ((cell % nx) + 0.5) * pitch;
}

export function middleY({ pitch, nx, ny }: Lattice, cell: number): number {
  return ((((cell / nx) | 0) % ny) + 0.5) * pitch;
}

export function middleZ({ pitch, nx, ny }: Lattice, cell: number): number {
  return (((cell / (nx * ny)) | 0) + 0.5) * pitch;
}
