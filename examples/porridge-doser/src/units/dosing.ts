/** Hopper, pump, product line with its capped sampling branch, nozzle. */
import { type Drawing, drawRoundedRectangle, type Shape3D } from 'replicad';
import { backWall, branch, laneY, type Parameters } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { hexBolt, hexNut, nutHeight } from '../stock/fasteners.ts';
import { bentPipe, clampBand, ferrule, ferruleRing, gasket, productPipe } from '../stock/pipes.ts';
import { alongX, alongY, alongZ, box, polygon, rod, turnedPart } from '../stock/solids.ts';
import { type Assembly, assembly, at, body, here, type Placed, turned } from '../tree.ts';

export const hopper = {
  x: -260,
  y: laneY,
  length: 240,
  width: 200,
  wall: 2,
  top: 1150,
  shoulder: 1090,
  /** Seal face of its outlet. */
  outlet: 965,
} as const;
/** Axis of the pipe that rinses the hopper from above. */
export const rinsePipeZ = hopper.top + 25;
export const hopperNeck = hopper.outlet + 12;
const pump = { z: 912, top: 963, bottom: 870, diameter: 80, depth: 56 } as const;
const line = { z: 820, tee: { x: -160, half: 44 }, nozzleX: -60 } as const;
const nozzle = { top: 772, tip: 742, mouth: 18 } as const;

export function dosing(p: Parameters): Assembly {
  const union = clampUnion();
  return assembly('dosing', [
    here(hopperUnit(p)),
    at(union, hopper.x, hopper.y, hopper.outlet - 1),
    here(pumpUnit()),
    at(union, hopper.x, hopper.y, pump.bottom - 1),
    here(productLine(union)),
  ]);
}

function hopperUnit(p: Parameters): Assembly {
  const armFrom = hopper.y + hopper.width / 2 + hopper.wall;
  const arm = body(
    'hopper arm round Ø20 1.4301',
    colors.stainless,
    rod(20, backWall.y - armFrom, [0, armFrom, 0], [0, 1, 0]),
  );
  return assembly('hopper unit', [
    here(body('hopper 12 L 1.4404', colors.bright, hopperShape(p.hopperCornerRadius))),
    at(arm, hopper.x - 80, 0, hopper.top - 50),
    at(arm, hopper.x + 80, 0, hopper.top - 50),
  ]);
}

/** Upright walls with rounded corners on four flat slopes that meet in sharp valleys above the round outlet. */
function hopperShape(cornerRadius: number): Shape3D {
  const { x, y, length, width, wall, top, shoulder, outlet } = hopper;
  const hull = (grow: number, bore: number): Shape3D => {
    // The slopes meet the outlet inside its bore, so that no ledge is left in the corners.
    const inscribed = bore / 2 / Math.SQRT2;
    const outline = (half: number): Drawing =>
      polygon([
        [-half - grow, top],
        [-half - grow, shoulder],
        [-inscribed, hopperNeck],
        [inscribed, hopperNeck],
        [half + grow, shoulder],
        [half + grow, top],
      ]);
    const walls = alongZ(
      drawRoundedRectangle(length + 2 * grow, width + 2 * grow, cornerRadius + grow),
      outlet,
      top,
    );
    return walls
      .intersect(alongY(outline(length / 2), -width, width))
      .intersect(alongX(outline(width / 2), -length, length))
      .fuse(rod(bore, hopperNeck + 12 - outlet, [0, 0, outlet]));
  };
  return hull(wall, productPipe.outside)
    .cut(hull(0, productPipe.inside))
    .fuse(ferruleRing([0, 0, outlet], [0, 0, -1], productPipe.inside))
    .translate([x, y, 0]);
}

function clampUnion(): Assembly {
  const tail = rod(8, 18, [ferrule.diameter / 2 + 5, 0, 0], [1, 0, 0]);
  return assembly('clamp union DN25', [
    at(body('clamp gasket EPDM DN25', colors.rubber, gasket(productPipe.inside)), 0, 0, -ferrule.gasket / 2),
    here(body('clamp band DN25 1.4301', colors.stainlessDark, clampBand())),
    here(body('clamp screw round Ø8 1.4301', colors.stainless, tail)),
  ]);
}

function pumpUnit(): Assembly {
  const { x, y } = hopper;
  const { z, top, bottom, diameter, depth } = pump;
  const wallFace = backWall.y;
  const casing = rod(diameter, depth, [x, y - depth / 2, z], [0, 1, 0])
    .fuse(rod(productPipe.outside, top - bottom, [x, y, bottom]))
    .fuse(ferruleRing([x, y, top], [0, 0, 1], 10))
    .fuse(ferruleRing([x, y, bottom], [0, 0, -1], 10))
    .cut(rod(productPipe.inside, top - bottom, [x, y, bottom]));
  const cover = turnedPart([
    [0, 0],
    [34, 0],
    [28, 10],
    [0, 14],
  ]);
  const gearbox = rod(60, wallFace - y - depth / 2 - 8, [x, y + depth / 2, z], [0, 1, 0]);
  const flange = rod(124, 8, [x, wallFace - 8, z], [0, 1, 0]);
  const bolt = body('hex bolt M8x30 A2', colors.stainlessDark, hexBolt(8, 30));
  const nut = body('hex nut M8 ISO 4032 A2', colors.stainlessDark, hexNut(8));
  const children: Placed[] = [
    here(body('pump casing 1.4404', colors.stainlessDark, casing)),
    turned(body('pump cover domed 1.4404', colors.stainlessDark, cover), 'x', 90, x, y - depth / 2, z),
    here(body('pump shaft housing Ø60 1.4301', colors.stainless, gearbox)),
    here(body('pump flange 1.4301', colors.stainless, flange)),
    here(body('pump motor 0.37 kW painted', colors.motor, motorShape())),
    here(body('motor drip shield 2 mm 1.4301', colors.stainless, dripShield())),
  ];
  for (const [dx, dz] of [
    [-38, -38],
    [38, -38],
    [-38, 38],
    [38, 38],
  ] as const) {
    children.push(turned(bolt, 'x', 90, x + dx * 1.2, wallFace - 8, z + dz * 1.2));
    children.push(turned(nut, 'x', -90, x + dx * 1.2, wallFace + backWall.thickness, z + dz * 1.2));
  }
  return assembly('dosing pump', children);
}

/** Thread that stands free behind the nut of a flange bolt. */
export const freeThread = 30 - 8 - backWall.thickness - nutHeight(8);

function motorShape(): Shape3D {
  const { x } = hopper;
  const from = backWall.y + backWall.thickness;
  return rod(92, 95, [x, from, pump.z], [0, 1, 0]).chamfer(6, (edge) => edge.inPlane('XZ', -(from + 95)));
}

/** Slopes backwards and away from the wall: water runs off. */
function dripShield(): Shape3D {
  const { x } = hopper;
  const from = backWall.y + backWall.thickness;
  return box([x - 60, from, 0], [x + 60, from + 108, 2])
    .rotate(-15, [x, from, 0], [1, 0, 0])
    .translate([0, 0, pump.z + 82]);
}

function productLine(union: Assembly): Assembly {
  const { x, y } = hopper;
  const { z, tee, nozzleX } = line;
  const gap = ferrule.gasket;
  const start = pump.bottom - gap;
  const teeLeft = tee.x - tee.half;
  const teeRight = tee.x + tee.half;
  const pipe = productPipe;
  const first = bentPipe(
    [
      [x, y, start],
      [x, y, z],
      [teeLeft - gap, laneY, z],
    ],
    pipe,
  )
    .fuse(ferruleRing([x, y, start], [0, 0, 1], pipe.inside))
    .fuse(ferruleRing([teeLeft - gap, laneY, z], [1, 0, 0], pipe.inside));
  const second = bentPipe(
    [
      [teeRight + gap, laneY, z],
      [nozzleX, laneY, z],
      [nozzleX, laneY, nozzle.top + gap],
    ],
    pipe,
  )
    .fuse(ferruleRing([teeRight + gap, laneY, z], [-1, 0, 0], pipe.inside))
    .fuse(ferruleRing([nozzleX, laneY, nozzle.top + gap], [0, 0, -1], pipe.inside));
  const capFace = laneY - pipe.inside / 2 - branch.reach;
  const support = rod(
    16,
    backWall.y - laneY - pipe.outside / 2,
    [tee.x, laneY + pipe.outside / 2, z],
    [0, 1, 0],
  );
  return assembly('product line', [
    here(body('product bend 29x1.5 1.4404', colors.bright, first)),
    turned(union, 'y', 90, teeLeft - gap / 2, laneY, z),
    here(body('sampling tee 29x1.5 1.4404', colors.bright, teeShape(capFace))),
    turned(union, 'x', 90, tee.x, capFace + gap / 2, z),
    turned(body('blind cap DN25 1.4404', colors.bright, blindCap()), 'x', 90, tee.x, capFace, z),
    turned(union, 'y', 90, teeRight + gap / 2, laneY, z),
    here(body('nozzle bend 29x1.5 1.4404', colors.bright, second)),
    at(union, nozzleX, laneY, nozzle.top + gap / 2),
    at(body('dosing nozzle 1.4404', colors.bright, nozzleShape()), nozzleX, laneY, 0),
    here(body('line support round Ø16 1.4301', colors.stainless, support)),
  ]);
}

function teeShape(capFace: number): Shape3D {
  const { z, tee } = line;
  const { outside, inside } = productPipe;
  const seal = capFace + ferrule.gasket;
  const run = (d: number) => rod(d, 2 * tee.half, [tee.x - tee.half, laneY, z], [1, 0, 0]);
  const leg = (d: number) => rod(d, laneY - seal, [tee.x, laneY, z], [0, -1, 0]);
  return run(outside)
    .fuse(leg(outside))
    .fuse(ferruleRing([tee.x - tee.half, laneY, z], [-1, 0, 0], inside))
    .fuse(ferruleRing([tee.x + tee.half, laneY, z], [1, 0, 0], inside))
    .fuse(ferruleRing([tee.x, seal, z], [0, -1, 0], inside))
    .cut(run(inside).fuse(leg(inside)));
}

/** Face at z = 0, body above. */
function blindCap(): Shape3D {
  const r = ferrule.diameter / 2;
  return turnedPart([
    [0, 0],
    [r, 0],
    [r, ferrule.length],
    [r - 6, ferrule.length + 2],
    [0, ferrule.length + 2],
  ]);
}

/** Narrows to its mouth, no ledge. */
function nozzleShape(): Shape3D {
  const { inside, outside } = productPipe;
  const { top, tip, mouth } = nozzle;
  return turnedPart([
    [inside / 2, top],
    [mouth / 2, tip],
    [mouth / 2 + 2, tip],
    [outside / 2 + 1, top - ferrule.length - 4],
    [ferrule.diameter / 2, top - ferrule.length],
    [ferrule.diameter / 2, top],
  ]);
}

/** Length of pipe over its diameter, from three zeros that different rules use. */
export function deadLeg(): { fromMainWall: number; fromMainAxis: number } {
  const { inside } = productPipe;
  return { fromMainWall: branch.reach / inside, fromMainAxis: (branch.reach + inside / 2) / inside };
}

/** Line in which two slopes of the hopper meet, from the sharp corner of the shoulder down to the bore. */
export const hopperValley = valley();

function valley(): { length: number; angle_deg: number } {
  const inscribed = productPipe.inside / 2 / Math.SQRT2;
  const run = hopper.length / 2 - inscribed;
  const reach = hopper.width / 2 - inscribed;
  const rise = hopper.shoulder - hopperNeck;
  const cosine = (run * reach) / (Math.hypot(rise, run) * Math.hypot(rise, reach));
  return { length: Math.hypot(run, reach, rise), angle_deg: 180 - (Math.acos(cosine) * 180) / Math.PI };
}
