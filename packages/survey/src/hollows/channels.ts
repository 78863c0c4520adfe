/** Blind channels and dead legs: what the straight round passages of a model end in. */
import type { BlindChannel, Control, DeadLeg, SurveySettings } from '../result.ts';
import type { Site } from '../site.ts';
import { step } from '../stopped.ts';
import { blindChannels } from './blind.ts';
import { deadLegs } from './dead-legs.ts';
import { ductsOf } from './ducts.ts';
import type { Found } from './found.ts';
import { junctionsOf } from './junctions.ts';
import type { Looks } from './looks.ts';
import { type Passage, passagesOf } from './passages.ts';
import { runsOf } from './runs.ts';

export interface Channels {
  readonly passages: readonly Passage[];
  readonly blind: readonly Found<BlindChannel>[];
  readonly deadLegs: readonly Found<DeadLeg>[];
}

export function channelsOf(
  looks: Looks,
  settings: SurveySettings,
  mains: Site['mains'],
  control: Control = {},
): Channels {
  const { model } = looks;
  const ducts = ductsOf(model, control);
  if (ducts.length === 0) return { passages: [], blind: [], deadLegs: [] };
  step(control, 'hollows', 0.4);
  const passages = passagesOf(runsOf(ducts, looks), looks, settings.contact_mm, control);
  step(control, 'hollows', 0.6);
  const junctions = junctionsOf(passages, looks);
  const ends = deadLegs(model, passages, junctions, mains);
  return {
    passages,
    blind: blindChannels(model, passages, junctions, ends, looks, settings),
    deadLegs: ends.legs,
  };
}
