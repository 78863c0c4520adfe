import { inflated } from './exact/inflate.ts';
import type { Soup } from './soup.ts';

/**
 * The same surface with all that bounds material moved outwards by `by_mm`, mm: what is narrower than twice that closes,
 * between parts and within one. Columns read it right where walls have passed through each other, for the winding there
 * is that of material. Sheets stay where they are.
 */
export function sealedSoup(soup: Soup, by_mm: number): Soup {
  const { uvz, triangles, sheet, low, high } = soup;
  const solid = triangles.filter((_, c) => !sheet[(c / 3) | 0]);
  const { positions } = inflated({ positions: uvz, triangles: solid }, by_mm);
  // A vertex at a sharp edge may move farther than its faces: the box is taken anew.
  const newLow: [number, number, number] = [...low];
  const newHigh: [number, number, number] = [...high];
  for (let i = 0; i < positions.length; i++) {
    const k = i % 3;
    if (positions[i] < newLow[k]) newLow[k] = positions[i];
    if (positions[i] > newHigh[k]) newHigh[k] = positions[i];
  }
  return { ...soup, uvz: positions, low: newLow, high: newHigh };
}
