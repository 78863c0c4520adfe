/** Belt conveyor at the left, then round bars that carry the jars through the machine. */
import { draw } from 'replicad';
import { deck, dish, jarFloor, jarPlate, laneY, type Parameters } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { domedNut, hexNut } from '../stock/fasteners.ts';
import { postBetween } from '../stock/posts.ts';
import { alongY, box, rod, turnedDrawing, turnedPart } from '../stock/solids.ts';
import { jarShape } from '../stock/vessels.ts';
import { type Assembly, assembly, at, type Body, body, here, type Placed, turned } from '../tree.ts';
import { deckPost } from './frame.ts';

const belt = { from: -578, to: -248, roller: 40, thickness: 2, width: 90 } as const;
const skid = { diameter: 12, apart: 25, from: -222, to: 560 } as const;
const postX = [-217, 217, 540] as const;
const postOut = 59;

export function infeed(p: Parameters, openJar: Body): Assembly {
  return assembly('infeed', [here(conveyor()), here(jarGuide(p)), here(lane()), here(waitingJars(openJar))]);
}

export function jarBody(): Body {
  return body('jar 0.35 L glass', colors.glass, jarShape());
}

function waitingJars(openJar: Body): Assembly {
  return assembly('jars waiting', [at(openJar, -500, laneY, jarFloor), at(openJar, -395, laneY, jarFloor)]);
}

function conveyor(): Assembly {
  const axis = jarFloor - belt.thickness - belt.roller / 2;
  const half = belt.width / 2;
  const roller = body('drum roller Ø40 1.4404', colors.stainlessDark, rollerShape());
  const cheek = body('conveyor cheek 4 mm 1.4301', colors.stainless, cheekShape(axis));
  const nut = body('hex nut M12 ISO 4032 A2', colors.stainlessDark, hexNut(12));
  const post = (y: number, name: string): Body => body(name, colors.stainless, deckPost(20, y, axis - 26));
  const front = post(laneY - half - 6, 'conveyor post front Ø20 1.4301');
  const rear = post(laneY + half + 6, 'conveyor post rear Ø20 1.4301');
  const guide = body('side guide bar round Ø10 1.4301', colors.bright, rod(10, 340, [0, 0, 0], [1, 0, 0]));
  const children: Placed[] = [
    at(roller, belt.from, laneY, axis),
    at(roller, belt.to, laneY, axis),
    at(body('belt PU blue 2 mm', colors.plasticBlue, beltShape()), 0, laneY, axis),
    at(
      body(
        'slider bed PE-UHMW',
        colors.plasticWhite,
        box([belt.from + 28, -half + 4, 12], [belt.to - 28, half - 4, 20]),
      ),
      0,
      laneY,
      axis,
    ),
    at(cheek, 0, laneY - half - 8, 0),
    at(cheek, 0, laneY + half + 4, 0),
    at(guide, -590, laneY - 47, jarFloor + 45),
    at(guide, -590, laneY + 47, jarFloor + 45),
  ];
  for (const x of [belt.from, belt.to]) {
    children.push(turned(nut, 'x', 90, x, laneY - half - 8, axis));
    children.push(turned(nut, 'x', -90, x, laneY + half + 8, axis));
  }
  for (const x of [-540, -290]) children.push(at(front, x, 0, 0), at(rear, x, 0, 0));
  return assembly('infeed conveyor', children);
}

function rollerShape() {
  const half = belt.width / 2;
  return rod(belt.roller, belt.width - 4, [0, -half + 2, 0], [0, 1, 0]).fuse(
    rod(12, belt.width + 44, [0, -half - 22, 0], [0, 1, 0]),
  );
}

/** Drawn from the axis of the rollers. */
function beltShape() {
  const loop = (radius: number) =>
    draw([belt.from, -radius])
      .hLineTo(belt.to)
      .threePointsArcTo([belt.to, radius], [belt.to + radius, 0])
      .hLineTo(belt.from)
      .threePointsArcTo([belt.from, -radius], [belt.from - radius, 0])
      .close();
  const half = belt.width / 2;
  const solid = (radius: number) => alongY(loop(radius), -half, half);
  return solid(belt.roller / 2 + belt.thickness).cut(solid(belt.roller / 2));
}

function cheekShape(axis: number) {
  return box([belt.from - 10, 0, axis - 26], [belt.to + 10, 4, axis + 12])
    .fillet(8, (edge) => edge.inDirection('Y'))
    .cut(rod(12.4, 10, [belt.from, -2, axis], [0, 1, 0]))
    .cut(rod(12.4, 10, [belt.to, -2, axis], [0, 1, 0]));
}

/** The plate under the bars, on four round spacers with domed nuts. */
function jarGuide(p: Parameters): Assembly {
  const tilt = Math.tan((p.jarPlateTilt_deg * Math.PI) / 180);
  const under = { z0: jarPlate.z - jarPlate.thickness - laneY * tilt, slope: tilt };
  const deckTop = { z0: deck.z, slope: Math.tan((deck.slope_deg * Math.PI) / 180) };
  const inset = { x: jarPlate.length / 2 - 16, y: jarPlate.width / 2 - 16 };
  const spacer = (y: number, name: string): Body =>
    body(name, colors.stainless, postBetween(16, y, deckTop, under));
  const front = spacer(laneY - inset.y, 'spacer front Ø16 1.4301');
  const rear = spacer(laneY + inset.y, 'spacer rear Ø16 1.4301');
  const nut = body('domed nut M8 DIN 1587 A2', colors.bright, domedNut(8));
  const children: Placed[] = [
    turned(
      body('jar guide plate 1.4301', colors.bright, guidePlate()),
      'x',
      p.jarPlateTilt_deg,
      jarPlate.x,
      laneY,
      jarPlate.z,
    ),
  ];
  for (const x of [-inset.x, inset.x]) {
    children.push(at(front, jarPlate.x + x, 0, 0), at(rear, jarPlate.x + x, 0, 0));
    for (const y of [-inset.y, inset.y]) {
      const turn = (p.jarPlateTilt_deg * Math.PI) / 180;
      children.push(
        turned(
          nut,
          'x',
          p.jarPlateTilt_deg,
          jarPlate.x + x,
          laneY + y * Math.cos(turn),
          jarPlate.z + y * Math.sin(turn),
        ),
      );
    }
  }
  return assembly('jar guide', children);
}

/** Upper face at z = 0 with the cap of a sphere pressed into it from above. */
function guidePlate() {
  const { length, width, thickness } = jarPlate;
  const sphere = (dish.radius ** 2 + dish.depth ** 2) / (2 * dish.depth);
  const mid = sphere - dish.depth - Math.sqrt(sphere ** 2 - (dish.radius / 2) ** 2);
  const cap = turnedDrawing(
    draw([0, 1])
      .hLineTo(dish.radius)
      .vLineTo(0)
      .threePointsArcTo([0, -dish.depth], [dish.radius / 2, mid])
      .close(),
  );
  return box([-length / 2, -width / 2, -thickness], [length / 2, width / 2, 0])
    .fillet(12, (edge) => edge.inDirection('Z'))
    .cut(cap);
}

function lane(): Assembly {
  const bar = body(
    'skid bar round Ø12 1.4404',
    colors.bright,
    rod(skid.diameter, skid.to - skid.from, [0, 0, 0], [1, 0, 0]),
  );
  const guide = body(
    'guide bar round Ø10 1.4301',
    colors.bright,
    rod(10, skid.to - skid.from, [0, 0, 0], [1, 0, 0]),
  );
  const cross = body(
    'cross bar round Ø12 1.4301',
    colors.stainless,
    rod(12, 2 * postOut - 16, [0, -postOut + 8, 0], [0, 1, 0]),
  );
  const front = body('guide post front Ø16 1.4301', colors.stainless, deckPost(16, laneY - postOut, 686));
  const rear = body('guide post rear Ø16 1.4301', colors.stainless, deckPost(16, laneY + postOut, 686));
  const cap = body('post cap sloped Ø16 1.4301', colors.bright, capShape());
  const children: Placed[] = [];
  for (const y of [-skid.apart, skid.apart])
    children.push(at(bar, skid.from, laneY + y, jarFloor - skid.diameter / 2));
  for (const y of [-46, 46]) children.push(at(guide, skid.from, laneY + y, jarFloor + 45));
  for (const x of postX) {
    children.push(at(cross, x, laneY, jarFloor - 1.5 * skid.diameter));
    children.push(at(front, x, 0, 0), at(rear, x, 0, 0));
    children.push(at(cap, x, laneY - postOut, 686), at(cap, x, laneY + postOut, 686));
  }
  return assembly('jar lane', children);
}

function capShape() {
  return turnedPart([
    [0, 0],
    [8, 0],
    [8, 2],
    [4, 6],
    [0, 7],
  ]);
}
