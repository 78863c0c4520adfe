/** A drain hole and a tilt, each tried on the model: what would stay, and how much liquid a year that is. */
import type { Vec3 } from '@coveline/model';
import type { Brief } from '@coveline/project';
import { formatQuantity, type WorkingValue } from '@coveline/quantity';
import type { Pool, Proposals, Trial } from '@coveline/survey';
import { runsPerYear } from '../cleaning/resources.ts';
import { theName } from '../names/display.ts';
import { effect } from './effect.ts';
import type { Effect, Option } from './option.ts';

/** From this share on, what the trial says stood before is told to differ from the survey. */
const differs = 0.1;

/** `nameOf`: name of a part by its id. */
export function drainOptions(
  { drain, tilt, part }: Proposals,
  pool: Pool,
  brief: Brief,
  nameOf: (part: string) => string,
): readonly Option[] {
  const options: Option[] = [];
  if (drain) {
    const { hole, trial, left_mL } = drain;
    const size = formatQuantity(hole.diameter_mm, 'mm');
    const through = trial.parts.map((id) => theName(nameOf(id))).join(' and ');
    const held = left_mL - trial.after_mL;
    options.push({
      text: `Drill a drain hole of ${size} through ${through}, at ${at(hole.at_mm)}.`,
      cost: 'low',
      effects: effects(trial, left_mL, 'V = flooded again + Vh', brief, [
        given('d', 'diameter of the hole', hole.diameter_mm, 'mm', 'the best of 6 to 25 mm'),
        given(
          'Vh',
          'held by surface tension over the hole',
          held,
          'mL',
          'Young and Laplace: (4 · 7.44 mm² / d - length of the hole) over the wet area, at most V0',
        ),
      ]),
      caveats: [
        ...caveatsOf(trial, pool),
        'The hole needs a rounded rim, and nothing below it that minds the drip.',
      ],
    });
  }
  if (tilt && part !== undefined) {
    const { trial, tilt: turn } = tilt;
    const angle = formatQuantity(turn.deg, 'deg');
    options.push({
      text: `Tilt ${theName(nameOf(part))} by ${angle} towards the side where it runs over.`,
      cost: 'some',
      effects: effects(trial, trial.after_mL, 'V = flooded again', brief, [
        given('a', 'angle of the tilt', turn.deg, 'deg', 'the best of 1 to 20 degrees'),
      ]),
      caveats: [
        ...caveatsOf(trial, pool),
        'Only this part was tilted: look whether what is fixed to it still fits and still works.',
      ],
    });
  }
  return options;
}

function effects(
  trial: Trial,
  left_mL: number,
  formula: string,
  brief: Brief,
  inputs: readonly WorkingValue[],
): readonly Effect[] {
  const runs = runsPerYear(brief);
  const source = 'the model flooded again with this change, by columns';
  const before = given('V0', 'stands before', trial.before_mL, 'mL', 'the model flooded by columns');
  const validity = 'as the model is drawn and levelled; within the width of a column';
  const perYear = (mL: number) => (mL * runs) / 1000;
  return [
    effect('Stays after draining', 'mL', [trial.before_mL, left_mL], {
      formula,
      inputs: [before, ...inputs],
      source,
      validity,
    }),
    effect('Liquid left behind in a year', 'L', [perYear(trial.before_mL), perYear(left_mL)], {
      formula: 'Va = V · n / 1000',
      inputs: [
        { symbol: 'V', name: 'stays after draining', value: left_mL, unit: 'mL', from: source },
        {
          symbol: 'n',
          name: 'cleanings in a year',
          value: runs,
          unit: '1',
          from: 'brief: 8760 h / interval',
        },
      ],
      source: 'brief and trial',
      validity: 'as often as the brief says',
    }),
  ];
}

function caveatsOf(trial: Trial, pool: Pool): readonly string[] {
  const away = Math.abs(trial.before_mL - pool.volume_mL) > differs * pool.volume_mL;
  const [stood, surveyed] = [trial.before_mL, pool.volume_mL].map((v) =>
    formatQuantity(v, 'mL', { digits: 3 }),
  );
  return [
    ...trial.caveats,
    ...(away
      ? [
          `The trial changes pools of ${stood} together, the survey measured ${surveyed} in this one: take the difference, not the figure.`,
        ]
      : []),
  ];
}

const given = (symbol: string, name: string, value: number, unit: string, from: string): WorkingValue => ({
  symbol,
  name,
  value,
  unit,
  from,
});

const at = (p: Vec3): string => `(${p.map((c) => Math.round(c)).join(', ')}) mm`;
