/** Rinse tank under the deck, riser and spray ball for the hopper, drain tray with its pipe. */
import { drawRoundedRectangle, type Shape3D } from 'replicad';
import { backWall, deck, deckZ, drainTray, type Parameters, rail } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { bentPipe, bentRod, cleaningPipe } from '../stock/pipes.ts';
import { alongY, alongZ, box, polygon, rod, tube, turnedPart } from '../stock/solids.ts';
import { type Assembly, assembly, at, body, here } from '../tree.ts';
import { hopper, rinsePipeZ } from './dosing.ts';

const tank = { x: -280, y: 30, length: 300, width: 200, top: 460, low: 270, fall: 24, wall: 2 } as const;

export function cleaning(p: Parameters): Assembly {
  return assembly('cleaning circuit', [here(tray()), here(riser()), here(rinseTank(p))]);
}

/** Folded sharp, and its drain collar stands above the floor: that keeps a pool. */
function tray(): Assembly {
  const { length, width, height, wall, collar, drain, collarWall } = drainTray;
  const y = deck.front - 22;
  const z = deckZ(deck.front) - 62;
  const [hx, hy] = [length / 2, width / 2];
  const trough = box([-hx - wall, -hy - wall, -wall], [hx + wall, hy + wall, height])
    .cut(box([-hx, -hy, 0], [hx, hy, height]))
    .fuse(rod(drain + 2 * collarWall, collar + wall, [0, 0, -wall]))
    .cut(rod(drain, 3 * wall + collar, [0, 0, -2 * wall]));
  const pipe = tube(drain + 2 * collarWall, drain, 180, [0, 0, -wall - 180]);
  const hanger = body(
    'tray hanger round Ø10 1.4301',
    colors.stainless,
    bentRod(
      [
        [0, hy + wall, 20],
        [0, hy + 37, 20],
        [0, hy + 37, 40],
      ],
      10,
      12,
    ),
  );
  return assembly('drain', [
    at(body('drain tray 2 mm 1.4301', colors.stainless, trough), 0, y, z),
    at(body('drain pipe 29x2 1.4301', colors.stainless, pipe), 0, y, z),
    at(hanger, -400, y, z),
    at(hanger, 400, y, z),
  ]);
}

/** From a valve behind the wall straight to a head that sprays the hopper. */
function riser(): Assembly {
  const { x } = hopper;
  const z = rinsePipeZ;
  const from = backWall.y + 40;
  const pipe = bentPipe(
    [
      [x, from, z],
      [x, hopper.y, z],
      [x, hopper.y, z - 60],
    ],
    cleaningPipe,
  );
  const head = turnedPart([
    [7.5, 0],
    [16, -14],
    [16, -34],
    [0, -38],
    [0, -34],
    [12, -30],
    [12, -16],
    [5, 0],
  ])
    .cut(rod(3, 60, [-30, 0, -26], [1, 0, 0]))
    .cut(rod(3, 60, [0, -30, -26], [0, 1, 0]))
    // Without this one the head would keep what it sprays.
    .cut(rod(3, 10, [0, 0, -40]))
    .translate([x, hopper.y, z - 60]);
  const valve = rod(46, 50, [x, from, z], [0, 1, 0]).chamfer(6);
  const lever = bentRod(
    [
      [x, from + 25, z - 23],
      [x, from + 25, z - 46],
      [x + 60, from + 25, z - 46],
    ],
    10,
    14,
  );
  return assembly('hopper spray', [
    here(body('rinse pipe 18x1.5 1.4404', colors.bright, pipe)),
    here(body('spray head Ø32 1.4404', colors.stainlessDark, head)),
    here(body('shut-off valve DN15 1.4408', colors.stainlessDark, valve)),
    here(body('hose nipple Ø18 1.4404', colors.stainless, rod(18, 40, [x, from + 50, z], [0, 1, 0]))),
    here(body('valve lever round Ø10 1.4301', colors.stainless, lever)),
  ]);
}

/** Stands on bars between the base rails; its floor falls to an open outlet, its upright edges are round. */
function rinseTank(p: Parameters): Assembly {
  const { x, y, length, width, top, low, fall, wall } = tank;
  const base = p.clearance + rail.size;
  const [hx, hy] = [length / 2, width / 2];
  const hull = (shrink: number): Shape3D =>
    alongY(
      polygon([
        [-hx, top - shrink],
        [-hx, low + fall + shrink],
        [hx, low + shrink],
        [hx, top - 12 - shrink],
      ]),
      -hy,
      hy,
    ).intersect(alongZ(drawRoundedRectangle(length - 2 * shrink, width - 2 * shrink, 24 - shrink), low, top));
  // Against the low wall, so that nothing stays beyond it.
  const outletX = hx - wall - 11.5;
  const shell = hull(0)
    .fuse(rod(27, 60, [outletX, 0, low - 40]))
    .cut(hull(wall))
    .cut(rod(23, 60, [outletX, 0, low - 41]));
  const leg = body('tank leg round Ø16 1.4301', colors.stainless, rod(16, low + 60 - base));
  const bar = body(
    'tank bar round Ø20 1.4301',
    colors.stainless,
    rod(20, 2 * rail.y - rail.size, [0, -rail.y + rail.size / 2, 0], [0, 1, 0]),
  );
  const legs = [-hx - 8, hx + 8].flatMap((dx) => [-50, 50].map((dy) => at(leg, x + dx, y + dy, base)));
  return assembly('rinse tank unit', [
    at(body('rinse tank 9 L 1.4404', colors.bright, shell), x, y, 0),
    ...legs,
    at(bar, x - hx - 8, 0, base - 10),
    at(bar, x + hx + 8, 0, base - 10),
  ]);
}
