/** Posts, back wall, and the hood that blows filtered air down on the jars. */

import type { Shape3D } from 'replicad';
import { backWall, crossBar, hoodBottom, jarFloor, laneY, type Parameters } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { hexBolt, hexNut, nutHeight } from '../stock/fasteners.ts';
import { cleaningPipe } from '../stock/pipes.ts';
import { alongX, box, polygon, rod } from '../stock/solids.ts';
import { jar } from '../stock/vessels.ts';
import { type Assembly, assembly, at, body, here, type Placed, turned } from '../tree.ts';
import { hopper, rinsePipeZ } from './dosing.ts';
import { deckPost } from './frame.ts';

const post = { x: 545, front: -262, rear: 262, diameter: 25 } as const;

export function hood(p: Parameters): Assembly {
  return assembly('hood', [here(posts()), here(wall(p)), here(airUnit()), here(visors()), here(bar())]);
}

function posts(): Assembly {
  const front = body(
    'hood post front round Ø25 1.4301',
    colors.stainless,
    deckPost(post.diameter, post.front, hoodBottom),
  );
  const rear = body(
    'hood post rear round Ø25 1.4301',
    colors.stainless,
    deckPost(post.diameter, post.rear, hoodBottom),
  );
  return assembly(
    'hood posts',
    [-post.x, post.x].flatMap((x) => [at(front, x, 0, 0), at(rear, x, 0, 0)]),
  );
}

export const lapBolts = { count: 7, pitch: 90 } as const;

export const wallHeight = { height: backWall.top - backWall.bottom, overlap: backWall.overlap } as const;

export function lapFreeThread(gap: number): number {
  return 20 - 2 * backWall.thickness - gap - nutHeight(6);
}

/** Two sheets that overlap behind a row of bolts, or one sheet where they were welded. */
function wall(p: Parameters): Assembly {
  const { y, thickness, bottom, top, halfWidth, overlap } = backWall;
  if (p.lapGap === null)
    return assembly('back wall unit', [
      here(
        body(
          'back wall welded 2 mm 1.4301',
          colors.bright,
          throughForRinsePipe(box([-halfWidth, y, bottom], [halfWidth, y + thickness, top])),
        ),
      ),
    ]);
  const half = overlap / 2;
  const behind = y + thickness + p.lapGap;
  const bolt = body('hex bolt M6x20 A2', colors.stainlessDark, hexBolt(6, 20));
  const nut = body('hex nut M6 ISO 4032 A2', colors.stainlessDark, hexNut(6));
  let left = throughForRinsePipe(box([-halfWidth, y, bottom], [half, y + thickness, top]));
  let right = box([-half, behind, bottom], [halfWidth, behind + thickness, top]);
  const rows = Array.from({ length: lapBolts.count }, (_, i) => 640 + i * lapBolts.pitch);
  for (const z of rows) {
    left = left.cut(rod(6.4, 10, [0, y - 4, z], [0, 1, 0]));
    right = right.cut(rod(6.4, 10, [0, y - 4, z], [0, 1, 0]));
  }
  const children: Placed[] = [
    here(body('back wall left 2 mm 1.4301', colors.bright, left)),
    here(body('back wall right 2 mm 1.4301', colors.bright, right)),
  ];
  for (const z of rows) {
    children.push(turned(bolt, 'x', 90, 0, y, z));
    children.push(turned(nut, 'x', -90, 0, behind + thickness, z));
  }
  return assembly('back wall unit', children);
}

function throughForRinsePipe(sheet: Shape3D): Shape3D {
  const { outside } = cleaningPipe;
  return sheet.cut(rod(outside, 20, [hopper.x, backWall.y - 10, rinsePipeZ], [0, 1, 0]));
}

/** Bought unit, drawn as a solid; its roof falls to the back. */
function airUnit(): Assembly {
  const filter = box([-530, -290, hoodBottom], [530, 225, hoodBottom + 60]);
  const frame = box([-572, -318, hoodBottom], [572, 268, hoodBottom + 60]).cut(
    box([-530, -290, hoodBottom], [530, 225, hoodBottom + 60]),
  );
  const housing = alongX(
    polygon([
      [-318, hoodBottom + 60],
      [268, hoodBottom + 60],
      [268, 1352],
      [-318, 1400],
    ]),
    -572,
    572,
  ).fillet(10, (edge) => edge.inDirection('X'));
  return assembly('air unit', [
    here(body('filter H14 glass fibre', colors.filter, filter)),
    here(body('filter frame 1.4301', colors.stainless, frame)),
    here(body('fan housing 1.4301', colors.bright, housing)),
  ]);
}

export const hinges = { count: 3, x: [-420, 0, 420] } as const;

function visors(): Assembly {
  const hinge = hingeUnit();
  const side = body('side visor 5 mm PETG', colors.clear, box([0, -300, 0], [5, 236, 190]));
  const front = body('front visor 5 mm PETG', colors.clear, box([-560, 0, -150], [560, 5, 0]));
  return assembly('visors', [
    at(side, -577, 0, hoodBottom - 190),
    at(side, 572, 0, hoodBottom - 190),
    at(front, 0, -318, hoodBottom - 14),
    ...hinges.x.map((x) => at(hinge, x, -318, hoodBottom - 2)),
  ]);
}

function hingeUnit(): Assembly {
  return assembly('visor hinge', [
    here(body('hinge leaf 60x25 1.4301', colors.stainless, box([-30, -3, -25], [30, 0, -4]))),
    here(body('hinge knuckle Ø10 1.4301', colors.stainlessDark, rod(10, 19, [-30, -6, 0], [1, 0, 0]))),
    here(
      body('hinge knuckle middle Ø10 1.4301', colors.stainlessDark, rod(10, 21, [-10.5, -6, 0], [1, 0, 0])),
    ),
    here(body('hinge knuckle outer Ø10 1.4301', colors.stainlessDark, rod(10, 19, [11, -6, 0], [1, 0, 0]))),
    here(body('hinge pin Ø4 A2', colors.bright, rod(4, 66, [-33, -6, 0], [1, 0, 0]))),
  ]);
}

const barBottom = jarFloor + jar.height + crossBar.aboveMouth;
export const hangerLength = hoodBottom - barBottom - crossBar.height;

/** Hangs on threaded rods over the open jars, in the way of the air that falls on them. */
function bar(): Assembly {
  const { width, height, from, to } = crossBar;
  const z = barBottom;
  const threaded = body('threaded rod M10 A2', colors.stainlessDark, rod(10, hangerLength));
  const nut = body('hex nut M10 ISO 4032 A2', colors.stainlessDark, hexNut(10));
  const ends = [from + 40, to - 40];
  return assembly('lamp bar unit', [
    here(
      body(
        'lamp bar 40x20 1.4301',
        colors.stainless,
        box([from, laneY - width / 2, z], [to, laneY + width / 2, z + height]),
      ),
    ),
    here(
      body('lamp lens PMMA', colors.filter, box([from + 80, laneY - 12, z - 6], [to - 80, laneY + 12, z])),
    ),
    ...ends.flatMap((x) => [at(threaded, x, laneY, z + height), at(nut, x, laneY, z + height)]),
  ]);
}
