/** Vertical sample lines on a square lattice in the turned frame: column (i, j) stands at u0 + i p, v0 + j p. */
export interface Grid {
  readonly u0: number;
  readonly v0: number;
  readonly pitch: number;
  readonly nu: number;
  readonly nv: number;
}

/** Column that lies nearest to a place, or -1 outside the grid. */
export function nearestColumn(grid: Grid, u: number, v: number): number {
  const i = Math.round((u - grid.u0) / grid.pitch);
  const j = Math.round((v - grid.v0) / grid.pitch);
  return i < 0 || j < 0 || i >= grid.nu || j >= grid.nv ? -1 : j * grid.nu + i;
}
