/** Lid magazine, press and the jars that have been filled. */

import { blindHole, jarFloor, laneY, type Parameters, toolShelf, wallFront } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { hexBolt } from '../stock/fasteners.ts';
import { box, rod, tube } from '../stock/solids.ts';
import { jar, lid, lidShape } from '../stock/vessels.ts';
import { type Assembly, assembly, at, type Body, body, here, type Placed, turned } from '../tree.ts';

const press = { x: 320, plate: 15, stroke: 36 } as const;
const magazine = { x: 215, bottom: 772, lids: 5, nested: 12 } as const;
const shelfX = 470;
const mouth = jarFloor + jar.height;
/** A lid's skirt reaches down over the neck. */
const lidDown = lid.height - lid.wall;

export function lidding(p: Parameters, jarBody: Body): Assembly {
  const lidBody = body('lid Ø76 tinplate', colors.yellow, lidShape());
  return assembly('lidding', [
    here(pressUnit(wallFront(p, press.x))),
    here(magazineUnit(lidBody, wallFront(p, magazine.x))),
    here(shelf(wallFront(p, shelfX))),
    here(
      assembly('jars filled', [
        at(jarBody, -60, laneY, jarFloor),
        at(jarBody, 80, laneY, jarFloor),
        ...[press.x, 440].flatMap((x) => [
          at(jarBody, x, laneY, jarFloor),
          at(lidBody, x, laneY, mouth - lidDown),
        ]),
      ]),
    ),
  ]);
}

function pressUnit(wall: number): Assembly {
  const { x } = press;
  const plateZ = mouth + lid.wall + press.stroke;
  const armZ = 905;
  const stem = rod(20, armZ - plateZ - press.plate, [x, laneY, plateZ + press.plate]);
  const arm = rod(36, wall - laneY - 25, [x, laneY + 25, armZ - 30], [0, 1, 0]);
  return assembly('lid press', [
    at(body('press head plate 15 mm 1.4301', colors.stainless, headPlate()), x, laneY, plateZ),
    at(body('press pad EPDM Ø70', colors.rubber, rod(70, 8)), x, laneY, plateZ - 8),
    here(body('press stem round Ø20 1.4301', colors.bright, stem)),
    here(
      body(
        'press cylinder Ø50 1.4301',
        colors.stainlessDark,
        rod(50, 90, [x, laneY, armZ - 70]).chamfer(4, (edge) => edge.inPlane('XY', armZ + 20)),
      ),
    ),
    here(body('press arm round Ø36 1.4301', colors.stainless, arm)),
  ]);
}

/** Threaded from above for tooling that is not fitted: the holes end blind. */
function headPlate() {
  let shape = box([-60, -60, 0], [60, 60, press.plate]).fillet(10, (edge) => edge.inDirection('Z'));
  for (const [x, y] of blindHolePlaces)
    shape = shape.cut(rod(blindHole.diameter, blindHole.depth, [x, y, press.plate - blindHole.depth]));
  return shape;
}

const blindHolePlaces = [
  [-42, -42],
  [42, -42],
  [-42, 42],
  [42, 42],
] as const;

function magazineUnit(lidBody: Body, wall: number): Assembly {
  const { x, bottom, lids, nested } = magazine;
  const post = body('magazine rod round Ø8 1.4301', colors.bright, rod(8, 120));
  const ring = tube(112, lid.diameter + 2, 6);
  const arm = rod(20, wall - laneY - 55, [x, laneY + 55, bottom + 3], [0, 1, 0]);
  const children: Placed[] = [
    at(body('magazine ring 6 mm POM', colors.plasticWhite, ring), x, laneY, bottom),
    here(body('magazine arm round Ø20 1.4301', colors.stainless, arm)),
  ];
  for (const [dx, dy] of [
    [-43, 0],
    [43, 0],
    [0, -43],
    [0, 43],
  ])
    children.push(at(post, x + dx, laneY + dy, bottom + 6));
  for (let i = 0; i < lids; i++) children.push(at(lidBody, x, laneY, bottom + 2 + i * nested * 1.25));
  return assembly('lid magazine', children);
}

/** Dead level, bolted to the wall. */
function shelf(wall: number): Assembly {
  const { length, width, thickness, z } = toolShelf;
  const plate = box([-length / 2, -width, 0], [length / 2, 0, thickness]).fuse(
    box([-length / 2, -thickness, -40], [length / 2, 0, 0]),
  );
  const bolt = body('hex bolt M6x12 A2', colors.stainlessDark, hexBolt(6, 12));
  return assembly('shelf', [
    at(body('tool shelf 3 mm 1.4301', colors.stainless, plate), shelfX, wall, z),
    turned(bolt, 'x', 90, shelfX - 60, wall - thickness, z - 22),
    turned(bolt, 'x', 90, shelfX + 60, wall - thickness, z - 22),
  ]);
}
