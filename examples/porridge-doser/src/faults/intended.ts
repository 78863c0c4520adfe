import { deck, revisionB } from '../parameters.ts';
import { jarContent_mL } from '../stock/vessels.ts';
import { type ExpectedNumber, number } from './fault.ts';

/** Looks like a fault to a measure and is none: a review must tell them apart. */
export function intended(): {
  parts: readonly string[];
  what: string;
  expected: readonly ExpectedNumber[];
}[] {
  return [
    {
      parts: ['jar 0.35 L glass'],
      what: 'A jar is there to hold liquid; under a lid it is a closed hollow.',
      expected: [number('content', jarContent_mL(), 'mL', 'frustums up to the brim')],
    },
    {
      parts: ['deck sheet 3 mm 1.4301'],
      what: 'The deck falls to the operator.',
      expected: [number('slope', deck.slope_deg, 'deg', 'drawn')],
    },
    {
      parts: ['domed nut M8 DIN 1587 A2', 'post cap sloped Ø16 1.4301'],
      what: 'Round and closed.',
      expected: [],
    },
    {
      parts: ['skid bar round Ø12 1.4404', 'guide bar round Ø10 1.4301', 'cross bar round Ø12 1.4301'],
      what: 'Level for the jars, and round, so that water runs off.',
      expected: [],
    },
    {
      parts: ['motor drip shield 2 mm 1.4301', 'fan housing 1.4301', 'panel housing 1.4301'],
      what: 'Slope and shed water.',
      expected: [],
    },
    {
      parts: ['jar guide plate 1.4301'],
      what: 'In revision B tilted by more than the slope of its dish.',
      expected: [number('tilt', revisionB.jarPlateTilt_deg, 'deg', 'drawn')],
    },
  ];
}
