import { chainPieces, type Piece } from '../weld/chain.ts';
import { facetsOf } from '../weld/facets.ts';
import { following } from '../weld/pair.ts';
import { lineLength } from '../weld/polyline.ts';
import { cavityTriangles } from '../weld/shells.ts';
import { turnAt } from '../weld/turn.ts';
import type { Weld } from '../weld/weld.ts';
import type { CornerLine, ShapeCorner } from './corner.ts';
import { joinLines } from './line.ts';

/**
 * Sharp inside corners of a triangulated shape: edges between two facets that close in on less than `below_deg`
 * through the air, joined into lines.
 *
 * A fillet that was drawn as one edge is not told from a sharp corner. An edge that turns by t, in a surface that
 * keeps within d of the true one, can hide a radius up to d / (1 - cos(t / 2)): the arc's middle then lies d from
 * the edge.
 */
export function sharpFromTriangles(weld: Weld, below_deg: number, deviation_mm: number): ShapeCorner[] {
  const { lines, pieces } = concaveEdges(weld, below_deg);
  return chainPieces(pieces, weld.tolerance_mm).map((order) => {
    const line = joinLines(lines, order);
    let length = 0;
    let angle = 0;
    for (const step of order) {
      const piece = pieces[step < 0 ? ~step : step];
      const l = lineLength(piece.points);
      length += l;
      angle += l * piece.angle_deg;
    }
    const angle_deg = angle / length;
    const turn = ((180 - angle_deg) * Math.PI) / 180;
    return {
      lines: [line],
      length_mm: length,
      radius_mm: 0,
      angle_deg,
      from: 'triangles',
      couldHideRadius_mm: deviation_mm / (1 - Math.cos(turn / 2)),
      triangles: [],
    };
  });
}

function concaveEdges(weld: Weld, below_deg: number): { lines: CornerLine[]; pieces: Piece[] } {
  const { positions: p, triangles, twin } = weld;
  const { facetOf, normals } = facetsOf(weld);
  const cavity = cavityTriangles(weld);
  const lines: CornerLine[] = [];
  const pieces: Piece[] = [];
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] < h) continue;
    const f = facetOf[(h / 3) | 0];
    const g = facetOf[(twin[h] / 3) | 0];
    if (f === g || cavity[(h / 3) | 0]) continue;
    const angle_deg = 180 + (turnAt(weld, h, normals, facetOf) * 180) / Math.PI;
    if (angle_deg > below_deg - angleTolerance_deg) continue;
    const a = triangles[h] * 3;
    const b = triangles[following(h)] * 3;
    const points = Float64Array.of(p[a], p[a + 1], p[a + 2], p[b], p[b + 1], p[b + 2]);
    const x = normals[f * 3] + normals[g * 3];
    const y = normals[f * 3 + 1] + normals[g * 3 + 1];
    const z = normals[f * 3 + 2] + normals[g * 3 + 2];
    const length = Math.hypot(x, y, z) || 1;
    const air = Float64Array.of(x / length, y / length, z / length, x / length, y / length, z / length);
    lines.push({ points, air });
    pieces.push({ points, angle_deg });
  }
  return { lines, pieces };
}

/** An angle of exactly the limit is let pass, whatever its last digits. */
export const angleTolerance_deg = 0.05;
