/**
 * Calculations that the reviewer kept with the machine. Sizes are those of the drawing; flows, counts and times are
 * invented, and each note says so.
 */
import { runAgain } from '@coveline/engineering';
import type { KeptCalculation } from '@coveline/project';
import { branch, dish } from './parameters.ts';
import { cleaningPipe, productPipe } from './stock/pipes.ts';
import { jar } from './stock/vessels.ts';

type Kept = Pick<KeptCalculation, 'id' | 'calculation' | 'title' | 'note' | 'inputs'> & {
  readonly about?: KeptCalculation['about'];
};

const mouth_cm2 = (Math.PI * (jar.mouth / 2) ** 2) / 100;
/** Side of the square that has the area of the dish, mm. */
const dishSide = Math.sqrt(Math.PI * dish.radius ** 2);

const kept: readonly Kept[] = [
  {
    id: 'rinse-pipe-shear',
    calculation: 'pipe-flow',
    title: 'Wall shear in the rinse pipe',
    note: 'Pipe 18x1.5 of the cleaning circuit. 12 L/min is what the spray head takes at the tap of the kitchen: invented.',
    inputs: { bore: `${cleaningPipe.inside} mm`, flow: '12 L/min', length: '1.4 m', temperature: '50 °C' },
  },
  {
    id: 'sampling-branch',
    calculation: 'dead-leg-ratio',
    title: 'Capped sampling branch of the product line',
    note: 'From the inner wall of the main to the face of the cap, as drawn.',
    inputs: {
      rule: 'bpe',
      length: `${branch.reach} mm`,
      branch: `${productPipe.inside} mm`,
      main: `${productPipe.inside} mm`,
    },
  },
  {
    id: 'hopper-rinse',
    calculation: 'rinse-tanks-in-series',
    title: 'Rinse water to wash the cleaner out of pipe and hopper',
    note: 'Hold-up of pipe, spray head and the film on the hopper: 0.9 L, invented. Three stirred tanks are a guess between one mixed volume and plug flow.',
    inputs: { tanks: '3', fraction: '0.1 %', holdUp: '0.9 L', flow: '12 L/min' },
  },
  {
    id: 'porridge-cook',
    calculation: 'lethality-of-cycle',
    title: 'Heat treatment of the porridge before it is chilled',
    note: 'Invented record of the coldest place in the kettle. 70 °C with z 7.5 K and two minutes for a 6-log reduction of Listeria monocytogenes: common practice, from memory.',
    inputs: {
      times: '0; 2; 4; 6; 8; 10; 12 min',
      temperatures: '55; 64; 70; 73; 74; 69; 58 °C',
      reference: '70 °C',
      z: '7.5 K',
      decimalReduction: '20 s',
      start: '6',
      target: '0',
    },
  },
  {
    id: 'dish-puddle',
    calculation: 'drying-time',
    title: 'Puddle in the dish of the jar guide plate',
    note: 'Depth and width of the dish of revision A, filled to its rim, in the air of the room of the brief with the hood off.',
    inputs: {
      depth: `${dish.depth} mm`,
      length: `${Math.round(dishSide)} mm`,
      room: '12 °C',
      relativeHumidity: '75 %',
      airSpeed: '0.1 m/s',
    },
    about: { revision: 'A' },
  },
  {
    id: 'open-jar',
    calculation: 'container-contamination',
    title: 'Microbes that fall into an open jar',
    note: 'Mouth of the jar as drawn. 5 cfu/m³, 25 s from infeed to lid and 360 jars an hour: invented.',
    inputs: {
      airborne: '5 cfu/m³',
      opening: `${mouth_cm2.toFixed(1)} cm²`,
      exposure: '25 s',
      downflow: '0.45 m/s',
      rate: '360 1/h',
      batch: '300',
    },
  },
];

/** With the results that they give now. Throws when one gives none: the demo would then be wrong. */
export function demoCalculations(): KeptCalculation[] {
  return kept.map((one) => {
    const typed = { ...one, locale: 'en' };
    const { gives, refusal } = runAgain(typed);
    if (gives === null) throw new Error(`Calculation "${one.id}" of the demo machine: ${refusal}`);
    return { ...typed, gave: gives };
  });
}
