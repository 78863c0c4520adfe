import type { CadEdge, CadTopology } from '@coveline/model';
import { chainPieces } from '../weld/chain.ts';
import { following } from '../weld/pair.ts';
import { cavityTriangles } from '../weld/shells.ts';
import type { Weld } from '../weld/weld.ts';
import type { CornerLine, ShapeCorner } from './corner.ts';
import { joinLines } from './line.ts';
import { angleTolerance_deg } from './sharp-triangles.ts';

/** Ends of CAD edges that are the same vertex lie closer than this; kernels keep vertices within about 1e-3 mm. */
const vertexTolerance_mm = 0.01;

/** Sharp inside corners of a shape with CAD faces: its concave edges, exact, joined into lines. */
export function sharpFromCad(weld: Weld, cad: CadTopology, below_deg: number): ShapeCorner[] {
  const borders = faceBorders(weld, cad);
  const cavity = cavityTriangles(weld);
  const edges = cad.edges.filter(
    (e) => e.turn === 'concave' && e.airAngle_deg < below_deg - angleTolerance_deg && e.points.length >= 6,
  );
  const seen: CadEdge[] = [];
  const lines: CornerLine[] = [];
  for (const edge of edges) {
    const halves = borders.get(borderKey(edge.faces[0], edge.faces[1])) ?? [];
    if (halves.length > 0 && cavity[(halves[0] / 3) | 0]) continue;
    seen.push(edge);
    lines.push({ points: edge.points, air: airAlong(weld, edge.points, halves) });
  }
  const pieces = seen.map((e) => ({ points: e.points, angle_deg: e.airAngle_deg }));
  return chainPieces(pieces, vertexTolerance_mm).map((order) => {
    let length_mm = 0;
    let angle = 0;
    for (const step of order) {
      const edge = seen[step < 0 ? ~step : step];
      length_mm += edge.length_mm;
      angle += edge.length_mm * edge.airAngle_deg;
    }
    return {
      lines: [joinLines(lines, order)],
      length_mm,
      radius_mm: 0,
      angle_deg: angle / length_mm,
      from: 'cad',
      triangles: [],
    };
  });
}

function borderKey(a: number, b: number): string {
  return a < b ? `${a},${b}` : `${b},${a}`;
}

/** Half-edges between triangles of different CAD faces, by the pair of faces. */
function faceBorders({ twin }: Weld, { faceOfTriangle }: CadTopology): Map<string, number[]> {
  const borders = new Map<string, number[]>();
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] < h) continue;
    const a = faceOfTriangle[(h / 3) | 0];
    const b = faceOfTriangle[(twin[h] / 3) | 0];
    if (a === b) continue;
    const list = borders.get(borderKey(a, b));
    if (list) list.push(h);
    else borders.set(borderKey(a, b), [h]);
  }
  return borders;
}

/** Per point: the unit direction half-way between the normals of the two faces, from the nearest border of theirs. */
function airAlong(weld: Weld, points: Float64Array, halves: readonly number[]): Float64Array {
  const { positions: p, triangles, twin, normals } = weld;
  const air = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    let best = -1;
    let least = Infinity;
    for (const h of halves) {
      const a = triangles[h] * 3;
      const b = triangles[following(h)] * 3;
      let d = 0;
      for (let k = 0; k < 3; k++) d += (points[i + k] - (p[a + k] + p[b + k]) / 2) ** 2;
      if (d >= least) continue;
      least = d;
      best = h;
    }
    if (best < 0) continue;
    const t = ((best / 3) | 0) * 3;
    const o = ((twin[best] / 3) | 0) * 3;
    let square = 0;
    for (let k = 0; k < 3; k++) {
      air[i + k] = normals[t + k] + normals[o + k];
      square += air[i + k] ** 2;
    }
    for (let k = 0; k < 3 && square > 0; k++) air[i + k] /= Math.sqrt(square);
  }
  return air;
}
