/** Faults of bodies: hollows and bare threads. */
import { type Parameters, rail, upright } from '../parameters.ts';
import { cabinet } from '../units/controls.ts';
import { freeThread } from '../units/dosing.ts';
import { bareThread, drilledHoles, uprightHollowLength } from '../units/frame.ts';
import { hangerLength, lapBolts, lapFreeThread } from '../units/hood.ts';
import { number, type PlantedFault } from './fault.ts';

export function hollows(p: Parameters): PlantedFault[] {
  const inner = rail.size - 2 * rail.wall;
  const bore = (Math.PI * upright.inside ** 2) / 4;
  const cabinetAir =
    (cabinet.width - 2 * cabinet.wall) *
      (cabinet.depth - cabinet.wall) *
      (cabinet.height - 2 * cabinet.wall) +
    (cabinet.width - 20) * (cabinet.height - 20) * 2;
  const closed = (
    id: string,
    part: string,
    what: string,
    volume_mm3: number,
    from: string,
  ): PlantedFault => ({
    id,
    kind: 'closedHollow',
    parts: [part],
    what,
    expected: [number('volume', volume_mm3 / 1000, 'mL', from)],
  });
  return [
    closed(
      'hollow-rail',
      'base rail front RHS 50x50x2 1.4301',
      'The rail is a closed hollow: nobody sees what is in it.',
      (2 * rail.halfLength - 2 * rail.wall) * inner * inner,
      'inside length x width x height',
    ),
    ...(['front', 'rear'] as const).map((side) =>
      closed(
        `hollow-upright-${side}`,
        `upright ${side} tube Ø48.3x2 1.4301`,
        `The ${side} uprights are closed hollows, welded shut; two of them.`,
        bore * uprightHollowLength(p, side),
        'one of two: pi d^2 / 4 x length',
      ),
    ),
    {
      ...closed(
        'cabinet-air',
        'cabinet housing 1.5 mm 1.4301',
        'The cabinet is hollow behind its door and seal: a sealed hollow that opens for service.',
        cabinetAir,
        'inside of the housing + inside of the seal',
      ),
      parts: ['cabinet housing 1.5 mm 1.4301', 'cabinet door seal EPDM', 'cabinet door 3 mm 1.4301'],
    },
    {
      id: 'open-rail',
      kind: 'openHollow',
      parts: ['base rail rear RHS 50x50x2 1.4301'],
      what: 'The rail is open at both ends and drilled through its wall; holes that nothing uses.',
      expected: [
        number('holes', drilledHoles.count, '1', 'drawn'),
        number('hole diameter', drilledHoles.diameter, 'mm', 'drawn'),
        number(
          'inside',
          (2 * rail.halfLength * inner * inner) / 1000,
          'mL',
          'length x width x height, an upper bound',
        ),
      ],
    },
  ];
}

export function threads(p: Parameters): PlantedFault[] {
  const lap: PlantedFault[] =
    p.lapGap === null
      ? []
      : [
          {
            id: 'lap-bolts',
            kind: 'exposedThread',
            parts: ['hex bolt M6x20 A2', 'hex nut M6 ISO 4032 A2'],
            what: 'Hexagon bolts through the lapped wall, with bare thread behind the nuts.',
            expected: [
              number('count', lapBolts.count, '1', 'drawn'),
              number('bare thread', lapFreeThread(p.lapGap), 'mm', 'length - sheets - gap - nut'),
            ],
          },
        ];
  return [
    ...lap,
    {
      id: 'flange-bolts',
      kind: 'exposedThread',
      parts: ['hex bolt M8x30 A2', 'hex nut M8 ISO 4032 A2'],
      what: 'Hexagon bolts hold the pump flange, with bare thread behind the nuts.',
      expected: [
        number('count', 4, '1', 'drawn'),
        number('bare thread', freeThread, 'mm', 'length - flange - wall - nut'),
      ],
    },
    {
      id: 'levelling-studs',
      kind: 'exposedThread',
      parts: ['levelling stud M16x60 A2'],
      what: 'The studs of the feet stand bare between pad and nut.',
      expected: [number('count', 4, '1', 'drawn'), number('bare thread', bareThread, 'mm', 'drawn')],
    },
    {
      id: 'threaded-hangers',
      kind: 'exposedThread',
      parts: ['threaded rod M10 A2', 'hex nut M10 ISO 4032 A2'],
      what: 'The lamp bar hangs on threaded rods above open jars.',
      expected: [
        number('count', 2, '1', 'drawn'),
        number('bare thread', hangerLength, 'mm', 'hood - top of the bar'),
      ],
    },
  ];
}
