/** Faults of surfaces: liquid that stays, level faces, corners and gaps. */
import {
  blindHole,
  dish,
  drainTray,
  type Parameters,
  rail,
  sensorChannel,
  toolShelf,
} from '../parameters.ts';
import { cabinet } from '../units/controls.ts';
import { hopper, hopperValley } from '../units/dosing.ts';
import { wallHeight } from '../units/hood.ts';
import { number, type PlantedFault } from './fault.ts';

export function liquid(p: Parameters): PlantedFault[] {
  const { radius: a, depth: h } = dish;
  const dished: PlantedFault = {
    id: 'dished-jar-plate',
    kind: 'standingLiquid',
    parts: ['jar guide plate 1.4301'],
    what: 'The plate is level and dished, so rinse water stays under the open jars.',
    expected: [
      number(
        'volume',
        (Math.PI * h * (3 * a * a + h * h)) / 6000,
        'mL',
        'spherical cap: pi h (3 a^2 + h^2) / 6; triangles within 0.1 mm of the sphere keep about 2 % less',
      ),
      number('depth', h, 'mm', 'h'),
      number('surface', (Math.PI * a * a) / 100, 'cm2', 'pi a^2'),
    ],
  };
  const { length, width, collar, drain, collarWall } = drainTray;
  const foot = Math.PI * (drain / 2 + collarWall) ** 2;
  const tray: PlantedFault = {
    id: 'raised-drain-collar',
    kind: 'standingLiquid',
    parts: ['drain tray 2 mm 1.4301'],
    what: 'The collar of the drain stands above the floor of the tray, which is level.',
    expected: [
      number(
        'volume',
        ((length * width - foot) * collar) / 1000,
        'mL',
        '(length x width - collar) x collar height',
      ),
      number('depth', collar, 'mm', 'collar height'),
    ],
  };
  const { length: l, width: w, height, wall } = sensorChannel;
  const channel: PlantedFault = {
    id: 'upturned-sensor-channel',
    kind: 'standingLiquid',
    parts: ['sensor bracket channel 30x20 1.4301'],
    what: 'The new sensor hangs on a channel that lies with its open side up and is closed at both ends.',
    expected: [
      number(
        'volume',
        ((l - 2 * wall) * (w - 2 * wall) * (height - wall)) / 1000,
        'mL',
        'inside length x width x height',
      ),
      number('depth', height - wall, 'mm', 'inside height'),
    ],
  };
  // A dish tilted by more than the slope of its rim runs empty.
  const rim_deg = (Math.asin((2 * a * h) / (a * a + h * h)) * 180) / Math.PI;
  return [
    ...(p.jarPlateTilt_deg < rim_deg ? [dished] : []),
    tray,
    ...(p.sensorBracket ? [channel] : []),
    {
      id: 'blind-threaded-holes',
      kind: 'blindHole',
      parts: ['press head plate 15 mm 1.4301'],
      what: 'Four threaded holes for tooling that is not fitted end blind and face up.',
      expected: [
        number('count', blindHole.count, '1', 'drawn'),
        number('depth', blindHole.depth, 'mm', 'drawn'),
        number('ratio', blindHole.depth / blindHole.diameter, '1', 'depth / diameter'),
        number(
          'volume of one',
          (Math.PI * blindHole.diameter ** 2 * blindHole.depth) / 4000,
          'mL',
          'pi d^2 / 4 x depth',
        ),
      ],
    },
  ];
}

export function levelFaces(): PlantedFault[] {
  const level = (id: string, part: string, what: string, area_mm2: number): PlantedFault => ({
    id,
    kind: 'levelFace',
    parts: [part],
    what,
    expected: [
      number('slope', 0, 'deg', 'drawn level'),
      number('area', area_mm2 / 100, 'cm2', 'length x width'),
    ],
  });
  return [
    level(
      'level-shelf',
      'tool shelf 3 mm 1.4301',
      'The tool shelf is level.',
      toolShelf.length * toolShelf.width,
    ),
    level(
      'flat-cabinet-roof',
      'cabinet housing 1.5 mm 1.4301',
      'The cabinet has a flat roof.',
      cabinet.width * cabinet.depth,
    ),
    level(
      'flat-rail-top',
      'base rail front RHS 50x50x2 1.4301',
      'The square rail lies on its side, so its top is level.',
      2 * rail.halfLength * rail.size,
    ),
  ];
}

export function cornersAndGaps(p: Parameters): PlantedFault[] {
  const { length, width, height, drain, collarWall } = drainTray;
  const rounded: PlantedFault[] =
    p.hopperCornerRadius < 3
      ? [
          {
            id: 'hopper-corner-radius',
            kind: 'smallRadius',
            parts: ['hopper 12 L 1.4404'],
            what: 'The four upright corners of the hopper are bent too tightly.',
            expected: [
              number('radius', p.hopperCornerRadius, 'mm', 'drawn'),
              number(
                'length',
                4 * (hopper.top - hopper.shoulder),
                'mm',
                '4 x upright height, less than 1 mm at each lower end',
              ),
            ],
          },
        ]
      : [];
  const lap: PlantedFault[] =
    p.lapGap === null
      ? []
      : [
          {
            id: 'lapped-back-wall',
            kind: 'narrowGap',
            parts: ['back wall left 2 mm 1.4301', 'back wall right 2 mm 1.4301'],
            what: 'The two sheets of the back wall overlap behind a row of bolts, without a seal.',
            expected: [
              number('width', p.lapGap, 'mm', 'drawn'),
              number('depth', wallHeight.overlap / 2, 'mm', 'half the overlap, which is open on both sides'),
              number('mouth', 2 * wallHeight.height, 'mm', 'both upright sides'),
            ],
          },
        ];
  return [
    ...lap,
    ...rounded,
    {
      id: 'sharp-tray',
      kind: 'sharpCorner',
      parts: ['drain tray 2 mm 1.4301'],
      what: 'The tray is folded and welded with sharp inside corners; its collar stands on the floor without a radius.',
      expected: [
        number(
          'length',
          2 * (length + width) + 4 * height + Math.PI * (drain + 2 * collarWall),
          'mm',
          'floor + uprights + foot of the collar',
        ),
        number('angle', 90, 'deg', 'drawn'),
      ],
    },
    {
      id: 'sharp-hopper-valleys',
      kind: 'sharpCorner',
      parts: ['hopper 12 L 1.4404'],
      what: 'The four slopes of the hopper meet in sharp valleys.',
      expected: [
        number(
          'length',
          4 * hopperValley.length,
          'mm',
          '4 x valley from the shoulder to the bore, within 5 %',
        ),
        number('angle', hopperValley.angle_deg, 'deg', '180 deg - angle between the normals of two slopes'),
      ],
    },
  ];
}
