/** Everything that the geometry of one shape says about fasteners. */
import type { Shape } from '@coveline/model';
import { weldOf } from '../weld/weld.ts';
import { around } from './axis.ts';
import { fromRecess, fromSocket } from './driven-heads.ts';
import { flatsOf } from './flats.ts';
import { fromHelices } from './helices.ts';
import { fromHexagon } from './hexagon-heads.ts';
import { hexagonsIn } from './hexagons.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';
import { recessesIn } from './recesses.ts';
import { fromTurned } from './turned.ts';

/** How far from a hexagon's axis is looked, over its width: a socket's head has three times its width. */
const reachOutside = 1.1;
const reachAround = 1.8;

/** `between` is called between the steps of the work, and may throw to end it. */
export function fastenersOfShape(shape: Shape, between: () => void): LocalFasteners {
  const weld = weldOf(shape);
  between();
  const { flats, from } = flatsOf(shape);
  between();
  const heads: LocalHead[] = [];
  const threads: LocalThread[] = [];
  const take = (found: LocalFasteners) => {
    heads.push(...found.heads);
    threads.push(...found.threads);
  };
  for (const hexagon of hexagonsIn(weld, flats)) {
    between();
    const near = around(
      weld,
      hexagon,
      (hexagon.inward ? reachAround : reachOutside) * hexagon.acrossFlats_mm,
    );
    take(hexagon.inward ? fromSocket(near, hexagon, from) : fromHexagon(near, hexagon, from));
  }
  for (const recess of recessesIn(weld, flats)) {
    between();
    take(fromRecess(around(weld, recess, 0.6 * recess.length_mm + 2 * recess.width_mm), recess, from));
  }
  between();
  if (heads.length === 0) threads.push(...fromHelices(shape));
  if (heads.length === 0 && threads.length === 0) take(fromTurned(shape));
  return { heads, threads };
}
