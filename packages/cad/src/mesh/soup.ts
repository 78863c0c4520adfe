/** Triangles as a file gives them, made into a shape: one vertex per place, wound from the air, checked. */
import type { Shape } from '@coveline/model';
import { CadError } from '../error.ts';
import { shapeHash } from '../hash.ts';
import { limits } from '../limits.ts';
import { flipTriangles, openEdges, signedVolume } from './check.ts';
import { weld } from './weld.ts';

export interface Soup {
  /** What the triangles are, for messages: `solid "lid"`, `object "arm"`. */
  readonly what: string;
  /** xyz per vertex in the unit of the file. */
  readonly positions: Float64Array;
  /** Three vertex indices per triangle. */
  readonly triangles: Uint32Array;
}

export interface SoupReading {
  readonly shape: Shape;
  /** Sentences for the notes. */
  readonly warnings: readonly string[];
}

/** Vertices closer than this are one, mm. */
const cell_mm = 1e-5;
/** Second try for meshes with rounded coordinates, as a part of the diagonal. */
const coarsePart = 1e-6;

/**
 * `mmPerUnit`: scale to millimetres. Throws CadError `damaged` for coordinates that are no numbers or beyond any machine
 * and for triangles that name vertices which do not exist; `noGeometry` where no triangle is left.
 */
export function shapeFromSoup(soup: Soup, mmPerUnit: number): SoupReading {
  const warnings: string[] = [];
  const positions = new Float64Array(soup.positions.length);
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const x = soup.positions[i] * mmPerUnit;
    if (!(Math.abs(x) <= limits.coordinate_mm)) {
      throw new CadError(
        'damaged',
        `Vertex ${Math.floor(i / 3) + 1} of ${soup.what} has the coordinate ${soup.positions[i]}, which no machine can have; check the file and its unit.`,
      );
    }
    positions[i] = x;
    if (x < low[i % 3]) low[i % 3] = x;
    if (x > high[i % 3]) high[i % 3] = x;
  }
  const vertices = positions.length / 3;
  for (let i = 0; i < soup.triangles.length; i++) {
    if (soup.triangles[i] >= vertices) {
      throw new CadError(
        'damaged',
        `Triangle ${Math.floor(i / 3) + 1} of ${soup.what} names vertex ${soup.triangles[i] + 1} of ${vertices}; the file is damaged, so export it again.`,
      );
    }
  }
  let mesh = weld(positions, soup.triangles, cell_mm);
  let open = openEdges(mesh.triangles, mesh.positions.length / 3);
  const diagonal = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  if (open > 0 && diagonal * coarsePart > cell_mm) {
    const coarse = weld(positions, soup.triangles, diagonal * coarsePart);
    const coarseOpen = openEdges(coarse.triangles, coarse.positions.length / 3);
    if (coarseOpen < open) {
      mesh = coarse;
      open = coarseOpen;
    }
  }
  if (mesh.triangles.length === 0) {
    throw new CadError('noGeometry', `No triangle of ${soup.what} has an area; export the model again.`);
  }
  if (open > 0) {
    warnings.push(
      `The surface of ${soup.what} does not close: ${open} edges of its triangles have no neighbour, or more than one.`,
    );
  } else if (signedVolume(mesh.positions, mesh.triangles) < 0) {
    flipTriangles(mesh.triangles);
    warnings.push(`The triangles of ${soup.what} were wound inside out; they were turned over.`);
  }
  const { positions: welded, triangles } = mesh;
  return { shape: { positions: welded, triangles, hash: shapeHash(welded, triangles) }, warnings };
}
