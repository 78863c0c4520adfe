import type { Part } from '@coveline/model';
import { expect, test } from 'vitest';
import { recognise } from './recognise.ts';

const part = (name: string, assembly: readonly string[] = []): Part => ({
  id: name,
  name,
  assembly,
  shape: 0,
  placement: new Float64Array(16),
});

test.each([
  ['jar guide plate 1.4301', 'guide'],
  ['guide rail', 'guide'],
  ['hex nut M16 ISO 4032 A2', 'fastener'],
  ['Sechskantschraube M8x25', 'fastener'],
  ['Rahmenrohr 50x50', 'frame'],
  ['Trichter', 'hopper'],
  ['Tropfwanne', 'tray'],
  ['Schaltschrank', 'enclosure'],
  ['vis de fixation M6', 'fastener'],
  ['joint de porte', 'gasket'],
  ['trémie', 'hopper'],
  ['tornillo M8', 'fastener'],
  ['guarnizione', 'gasket'],
  ['HexBolt_M8', 'fastener'],
  ['drain tray 2 mm', 'tray'],
  ['visor hinge', 'hinge'],
  ['lamp bar 40x20', 'lamp'],
  ['pump motor 0.37 kW', 'drive'],
  ['emergency stop red', 'control'],
  ['bottle', 'container'],
])('%s is taken for a %s', (name, noun) => {
  expect(recognise(part(name))?.noun).toBe(noun);
});

test.each(['PRT-00012', 'Body 7', 'spacer', 'Solid1', ''])('"%s" says nothing', (name) => {
  expect(recognise(part(name))).toBeNull();
});

test('a plain name takes the word of the innermost assembly, unless that is a fastener', () => {
  expect(recognise(part('plate', ['machine', 'hopper unit']))).toMatchObject({
    noun: 'hopper',
    from: 'assembly',
  });
  expect(recognise(part('plate', ['pump', 'bolt set']))).toMatchObject({ noun: 'pump', from: 'assembly' });
});
