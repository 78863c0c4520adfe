/** Faults of the arrangement: legs, product line, air, cables, controls, hinges. */
import { branch, crossBar, type Parameters } from '../parameters.ts';
import { jar } from '../stock/vessels.ts';
import { cableLayout } from '../units/controls.ts';
import { deadLeg } from '../units/dosing.ts';
import { hinges } from '../units/hood.ts';
import { number, type PlantedFault } from './fault.ts';

export function aroundTheProduct(p: Parameters): PlantedFault[] {
  const u = crossBar.width / jar.mouth;
  const hidden = (2 / Math.PI) * (Math.asin(u) + u * Math.sqrt(1 - u * u));
  const { fromMainWall, fromMainAxis } = deadLeg();
  const low: PlantedFault[] =
    p.clearance < 150
      ? [
          {
            id: 'low-legs',
            kind: 'lowLegs',
            parts: ['foot pad PA66 Ø64'],
            what: 'The frame is too close to what the machine stands on to see and clean under it.',
            expected: [number('clearance', p.clearance, 'mm', 'drawn')],
          },
        ]
      : [];
  return [
    ...low,
    {
      id: 'capped-branch',
      kind: 'deadLeg',
      parts: ['sampling tee 29x1.5 1.4404', 'blind cap DN25 1.4404'],
      what: 'The sampling branch of the product line ends in a blind cap.',
      expected: [
        number('length from the wall of the main', branch.reach, 'mm', 'drawn'),
        number('L/D from the wall of the main', fromMainWall, '1', 'length / bore'),
        number('L/D from the axis of the main', fromMainAxis, '1', '(length + bore / 2) / bore'),
      ],
    },
    {
      id: 'bar-over-jars',
      kind: 'overhead',
      parts: ['lamp bar 40x20 1.4301', 'lamp lens PMMA'],
      what: 'A bar hangs over the open jars, in the way of the filtered air.',
      expected: [
        number('height above the mouths', crossBar.aboveMouth, 'mm', 'drawn'),
        number(
          'part of a mouth hidden from straight above',
          hidden,
          '1',
          'strip over a circle: (2 / pi)(asin u + u sqrt(1 - u^2)), u = width / mouth',
        ),
      ],
    },
  ];
}

export function equipment(): PlantedFault[] {
  return [
    {
      id: 'bundled-cables',
      kind: 'cables',
      parts: ['motor cable PUR Ø8', 'drum roller cable PUR Ø8', 'panel cable PVC Ø8', 'cable tie PA66'],
      what: 'Three cables run tied together along the frame.',
      expected: [
        number('count', cableLayout.count, '1', 'drawn'),
        number('air between', cableLayout.apart - cableLayout.diameter, 'mm', 'pitch - diameter'),
      ],
    },
    {
      id: 'emergency-stop',
      kind: 'controls',
      parts: ['emergency stop Ø40 red PA66', 'emergency stop collar yellow PA66'],
      what: 'The emergency stop has a groove under its head; it is there for the safety of the operator.',
      expected: [number('count', 1, '1', 'drawn')],
    },
    {
      id: 'visor-hinges',
      kind: 'hinge',
      parts: ['hinge leaf 60x25 1.4301', 'hinge knuckle Ø10 1.4301', 'hinge pin Ø4 A2'],
      what: 'The front visor turns in hinges whose knuckles run on a pin, above the jars.',
      expected: [number('count', hinges.count, '1', 'drawn')],
    },
  ];
}
