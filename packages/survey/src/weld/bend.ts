import { type Facets, facetsOf } from './facets.ts';
import { edgeLength, turnAt } from './turn.ts';
import type { Weld } from './weld.ts';

/**
 * A sharper turn is an edge, not a step of a curved face. Coarse files step round a tube in 12 facets of 30 degrees,
 * and round an inside fillet in 2 facets, which turn by 45 degrees; an eight-sided bar is not round.
 */
const smoothOutward = (35 * Math.PI) / 180;
const smoothInward = (46 * Math.PI) / 180;

export function isSmooth(turn: number): boolean {
  return turn < smoothOutward && turn > -smoothInward;
}

/** A curved face's facets are alike: one less curved than this part of its neighbours is a plane beside a fillet. */
const likeness = 0.25;

/**
 * Per facet: by how much the surface bends there, 1/mm, positive over outer curves; 0 on planes.
 *
 * Half the sum of turn times length over a facet's smooth edges, divided by its area: 1/r on a cylinder, the sum of
 * both principal curvatures in general (Cohen-Steiner and Morvan, Restricted Delaunay triangulations and normal
 * cycle, 2003). A plane that ends in a fillet shares the fillet's first edge, but bends far less than the fillet.
 */
export function facetBend(weld: Weld): Float64Array {
  const facets = facetsOf(weld);
  const raw = rawBend(weld, facets);
  const { facetOf } = facets;
  const n = facets.areas.length;
  const around = new Float64Array(n);
  const length = new Float64Array(n);
  overSmoothEdges(weld, facets, (h, l) => {
    const f = facetOf[(h / 3) | 0];
    around[f] += Math.abs(raw[facetOf[(weld.twin[h] / 3) | 0]]) * l;
    length[f] += l;
  });
  const bend = new Float64Array(n);
  for (let f = 0; f < n; f++) {
    if (length[f] > 0 && Math.abs(raw[f]) >= (likeness * around[f]) / length[f]) bend[f] = raw[f];
  }
  return bend;
}

function rawBend(weld: Weld, facets: Facets): Float64Array {
  const { facetOf, areas, normals } = facets;
  const bend = new Float64Array(areas.length);
  overSmoothEdges(weld, facets, (h, length) => {
    bend[facetOf[(h / 3) | 0]] += turnAt(weld, h, normals, facetOf) * length;
  });
  for (let f = 0; f < bend.length; f++) bend[f] = areas[f] > 0 ? bend[f] / (2 * areas[f]) : 0;
  return bend;
}

/** Every half-edge between two facets that turn smoothly into each other, from either side. */
function overSmoothEdges(
  weld: Weld,
  { facetOf, normals }: Facets,
  visit: (h: number, length_mm: number) => void,
): void {
  const { twin } = weld;
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] < 0) continue;
    if (facetOf[(h / 3) | 0] === facetOf[(twin[h] / 3) | 0]) continue;
    if (isSmooth(turnAt(weld, h, normals, facetOf))) visit(h, edgeLength(weld, h));
  }
}
