/** Feet, base frame, uprights and the sloping deck on which everything stands. */

import { deck, deckZ, type Parameters, rail, upright } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { hexNut, nutHeight } from '../stock/fasteners.ts';
import { level, postBetween } from '../stock/posts.ts';
import { alongX, bentSheet, box, rod, turnedPart } from '../stock/solids.ts';
import { type Assembly, assembly, at, body, here } from '../tree.ts';

const padHeight = 12;
/** Bare thread between pad and nut, so that the foot can be levelled. */
export const bareThread = 45;
const barDiameter = 30;

export function frame(p: Parameters): Assembly {
  const { y, halfLength, size } = rail;
  const low = p.clearance;
  const foot = levellingFoot(p);
  const sideBar = body(
    'side bar round Ø30 1.4301',
    colors.stainless,
    rod(barDiameter, 2 * y - size, [0, -y + size / 2, 0], [0, 1, 0]),
  );
  const tableRail = body(
    'table rail round Ø30 1.4301',
    colors.stainless,
    rod(barDiameter, 2 * halfLength, [-halfLength, 0, 0], [1, 0, 0]),
  );
  const [front, rear] = [tableRailZ(-y), tableRailZ(y)];
  const frontUpright = body(
    'upright front tube Ø48.3x2 1.4301',
    colors.stainless,
    closedUpright(front - low - size),
  );
  const rearUpright = body(
    'upright rear tube Ø48.3x2 1.4301',
    colors.stainless,
    closedUpright(rear - low - size),
  );
  const xs = [-upright.x, upright.x];
  return assembly('frame', [
    ...xs.flatMap((x) => [-y, y].map((v) => at(foot, x, v, 0))),
    at(body('base rail front RHS 50x50x2 1.4301', colors.stainless, closedRail()), 0, -y, low),
    at(body('base rail rear RHS 50x50x2 1.4301', colors.stainless, drilledRail()), 0, y, low),
    ...xs.map((x) => at(sideBar, x, 0, low + size / 2)),
    ...xs.map((x) => at(frontUpright, x, -y, low + size)),
    ...xs.map((x) => at(rearUpright, x, y, low + size)),
    at(tableRail, 0, -y, front),
    at(tableRail, 0, y, rear),
    here(body('deck sheet 3 mm 1.4301', colors.bright, deckSheet())),
  ]);
}

/** Middle of the round bar on which the deck lies. */
function tableRailZ(y: number): number {
  const slope = (deck.slope_deg * Math.PI) / 180;
  return deckZ(y) - (deck.thickness + barDiameter / 2) / Math.cos(slope);
}

/** Length of the air inside an upright: the end walls are as thick as the tube's wall. */
export function uprightHollowLength(p: Parameters, side: 'front' | 'rear'): number {
  const y = side === 'front' ? -rail.y : rail.y;
  return tableRailZ(y) - barDiameter / 2 - p.clearance - rail.size - (upright.outside - upright.inside);
}

/** Welded shut at both ends; its upper end is hollowed out to seat the round table rail. */
function closedUpright(toRailAxis: number) {
  const wall = (upright.outside - upright.inside) / 2;
  const inside = toRailAxis - barDiameter / 2 - 2 * wall;
  const saddle = rod(barDiameter, 100, [-50, 0, toRailAxis], [1, 0, 0]);
  return rod(upright.outside, toRailAxis)
    .cut(saddle)
    .cut(rod(upright.inside, inside, [0, 0, wall]));
}

function closedRail() {
  const { size, wall, halfLength } = rail;
  const half = size / 2;
  return box([-halfLength, -half, 0], [halfLength, half, size]).cut(
    box([-halfLength + wall, -half + wall, wall], [halfLength - wall, half - wall, size - wall]),
  );
}

/** Left open at its ends, and drilled through the wall for brackets that were moved since. */
export const drilledHoles = { count: 5, diameter: 8.4, pitch: 200 } as const;

function drilledRail() {
  const { size, wall, halfLength } = rail;
  const half = size / 2;
  let shape = box([-halfLength, -half, 0], [halfLength, half, size]).cut(
    box([-halfLength, -half + wall, wall], [halfLength, half - wall, size - wall]),
  );
  for (let i = 0; i < drilledHoles.count; i++) {
    const x = (i - (drilledHoles.count - 1) / 2) * drilledHoles.pitch;
    shape = shape.cut(rod(drilledHoles.diameter, 10, [x, half - 6, size / 2], [0, 1, 0]));
  }
  return shape;
}

/** Pad, bare stud and nut; in the longer version a round leg carries the same foot. */
function levellingFoot(p: Parameters): Assembly {
  const pad = turnedPart([
    [0, 0],
    [32, 0],
    [32, 3],
    [12, padHeight],
    [0, padHeight],
  ]);
  const nutTop = padHeight + bareThread + nutHeight(16);
  const children = [
    here(body('foot pad PA66 Ø64', colors.rubber, pad)),
    at(body('levelling stud M16x60 A2', colors.stainlessDark, rod(16, nutTop - padHeight)), 0, 0, padHeight),
    at(body('hex nut M16 ISO 4032 A2', colors.stainlessDark, hexNut(16)), 0, 0, padHeight + bareThread),
  ];
  const leg = rod(40, p.clearance - nutTop);
  children.push(at(body('leg round Ø40 1.4301', colors.stainless, leg), 0, 0, nutTop));
  return assembly('levelling foot', children);
}

/** Upper face falls to the operator; front and back edges are bent down with a generous radius. */
function deckSheet() {
  const { front, back, halfWidth, thickness } = deck;
  const skirt = 22;
  const line = [
    [back, deckZ(back) - skirt],
    [back, deckZ(back)],
    [front, deckZ(front)],
    [front, deckZ(front) - skirt],
  ] as const;
  return alongX(bentSheet(line, thickness, 6), -halfWidth, halfWidth);
}

/** A post that stands on the deck and ends level; drawn at its height and its y. */
export function deckPost(diameter: number, y: number, top: number) {
  return postBetween(
    diameter,
    y,
    { z0: deck.z, slope: Math.tan((deck.slope_deg * Math.PI) / 180) },
    level(top),
  );
}
