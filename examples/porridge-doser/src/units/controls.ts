/** Cabinet behind the wall, operator panel with emergency stop, cables between them. */

import { backWall, type Parameters, sensorChannel, wallFront } from '../parameters.ts';
import { colors } from '../stock/colors.ts';
import { bentRod } from '../stock/pipes.ts';
import { box, rod, turnedPart } from '../stock/solids.ts';
import { type Assembly, assembly, at, body, here, type Placed, type Point3, turned } from '../tree.ts';
import { deckPost } from './frame.ts';

export const cabinet = {
  x: 400,
  width: 220,
  depth: 110,
  bottom: 720,
  height: 280,
  wall: 1.5,
  door: 3,
} as const;
const panel = { x: 425, y: -232, z: 790, tilt_deg: 25 } as const;
export const cableLayout = { diameter: 8, apart: 9, count: 3 } as const;

export function controls(p: Parameters): Assembly {
  const children: Placed[] = [here(cabinetUnit(p)), here(panelUnit()), here(cableRun())];
  if (p.sensorBracket) children.push(here(sensor(p)));
  return assembly('controls', children);
}

const wallBack = backWall.y + 12;

function cabinetUnit(p: Parameters): Assembly {
  const { x, width, depth, bottom, height, wall, door } = cabinet;
  const low: Point3 = [x - width / 2, wallBack, bottom];
  const high: Point3 = [x + width / 2, wallBack + depth, bottom + height];
  const housing = box(low, high).cut(
    box([low[0] + wall, low[1] + wall, low[2] + wall], [high[0] - wall, high[1], high[2] - wall]),
  );
  const seal = box([low[0], high[1], low[2]], [high[0], high[1] + 2, high[2]]).cut(
    box([low[0] + 10, high[1], low[2] + 10], [high[0] - 10, high[1] + 2, high[2] - 10]),
  );
  const leaf = box([low[0] - 2, high[1] + 2, low[2] - 2], [high[0] + 2, high[1] + 2 + door, high[2] + 2]);
  const gland = body(
    'cable gland M16 PA66',
    colors.rubber,
    rod(20, 8, [0, 0, -8]).fuse(rod(14, 16, [0, 0, -16])),
  );
  const lock = turnedPart([
    [0, 0],
    [10, 0],
    [7, 5],
    [0, 6],
  ]);
  const behind = wallFront(p, x) + backWall.thickness;
  const glands = cableStarts().map(([gx, gy]) => at(gland, gx, gy, bottom));
  const standoff = body(
    'cabinet spacer round Ø20 1.4301',
    colors.stainless,
    rod(20, wallBack - behind, [0, behind, 0], [0, 1, 0]),
  );
  return assembly('control cabinet', [
    here(body('cabinet housing 1.5 mm 1.4301', colors.bright, housing)),
    here(body('cabinet door seal EPDM', colors.rubber, seal)),
    here(body('cabinet door 3 mm 1.4301', colors.stainless, leaf)),
    turned(
      body('door lock domed 1.4301', colors.stainlessDark, lock),
      'x',
      -90,
      high[0] - 20,
      high[1] + 2 + door,
      bottom + height / 2,
    ),
    ...glands,
    ...[-80, 80].flatMap((dx) => [40, height - 40].map((dz) => at(standoff, x + dx, 0, bottom + dz))),
  ]);
}

/** On one post, leaning back so that it sheds water; raised buttons only. */
function panelUnit(): Assembly {
  const { x, y, z, tilt_deg } = panel;
  const face = -22;
  const housing = box([-100, -22, 0], [100, 22, 130]).fillet(6);
  const button = () => rod(22, 8, [0, 0, 0], [0, -1, 0]).fillet(2, (edge) => edge.inPlane('XZ', 8));
  const collar = rod(60, 4, [0, 0, 0], [0, -1, 0]);
  const stop = turnedPart([
    [0, 0],
    [11, 0],
    [11, 12],
    [20, 14],
    [18, 21],
    [10, 25],
    [0, 26],
  ]);
  const unit = assembly('panel head', [
    here(body('panel housing 1.4301', colors.stainless, housing)),
    here(body('display glass', colors.screen, box([-85, face - 1.5, 40], [10, face, 110]))),
    at(body('push button green PA66', colors.green, button()), -60, face, 20),
    at(body('push button white PA66', colors.plasticWhite, button()), -20, face, 20),
    at(body('emergency stop collar yellow PA66', colors.yellow, collar), 58, face, 75),
    turned(body('emergency stop Ø40 red PA66', colors.red, stop), 'x', 90, 58, face - 4, 75),
  ]);
  return assembly('operator panel', [
    here(body('panel post round Ø30 1.4301', colors.stainless, panelPost())),
    turned(unit, 'x', -tilt_deg, x, y, z),
  ]);
}

function panelPost() {
  const { x, y, z } = panel;
  return deckPost(30, y, z + 12).translate([x, 0, 0]);
}

/** Clear of the rear edge of the deck. */
const cableY = wallBack + 60;

function cableStarts(): [number, number][] {
  return Array.from({ length: cableLayout.count }, (_, i) => [cabinet.x - 40 + i * 40, cableY]);
}

/** One under the other with one millimetre of air between them, along the rear of the machine. */
function cableRun(): Assembly {
  const { diameter, apart } = cableLayout;
  const low = 520;
  const z = (i: number): number => low - i * apart;
  const cable = (name: string, i: number, rest: readonly Point3[]) => {
    const [x, y] = cableStarts()[i];
    const points: Point3[] = [[x, y, cabinet.bottom - 16], [x, y, z(i)], ...rest];
    return body(name, colors.cable, bentRod(points, diameter, 18));
  };
  const motor = cable('motor cable PUR Ø8', 0, [
    [-260, cableY, z(0)],
    [-260, cableY, 866],
  ]);
  const drum = cable('drum roller cable PUR Ø8', 1, [
    [-578, cableY, z(1)],
    [-578, -20, z(1)],
    [-578, -20, 600],
  ]);
  const desk = cable('panel cable PVC Ø8', 2, [
    [-200, cableY, z(2)],
    [-200, panel.y + 17, z(2)],
    [panel.x, panel.y + 17, z(2)],
  ]);
  const tie = body('cable tie PA66', colors.rubber, tieShape(low));
  return assembly('cables', [
    here(motor),
    here(drum),
    here(desk),
    ...[300, 150, 0, -150].map((x) => at(tie, x, cableY, 0)),
  ]);
}

function tieShape(low: number) {
  const { diameter, apart, count } = cableLayout;
  const half = diameter / 2;
  const [bottom, top] = [low - (count - 1) * apart - half, low + half];
  return box([-2.5, -half - 1.5, bottom - 1.5], [2.5, half + 1.5, top + 1.5]).cut(
    box([-2.5, -half, bottom], [2.5, half, top]),
  );
}

/** Revision B only: looks at the jars from behind, on a channel that lies open side up. */
function sensor(p: Parameters): Assembly {
  const { length, width, height, wall } = sensorChannel;
  const x = 80;
  const y = 60;
  const z = 770;
  const channel = box([-length / 2, -width / 2, 0], [length / 2, width / 2, height]).cut(
    box([-length / 2 + wall, -width / 2 + wall, wall], [length / 2 - wall, width / 2 - wall, height]),
  );
  const eye = rod(18, 60, [x, y - width / 2 - 34, z - 9], [0, 1, 0]);
  const arm = rod(16, wallFront(p, x) - y - width / 2, [x, y + width / 2, z + height / 2], [0, 1, 0]);
  return assembly('jar sensor', [
    at(body('sensor bracket channel 30x20 1.4301', colors.stainless, channel), x, y, z),
    here(body('fill level sensor M18 1.4404', colors.stainlessDark, eye)),
    here(body('sensor arm round Ø16 1.4301', colors.stainless, arm)),
  ]);
}
