/** What the answers of the round say on a requirement. */
import type { Demand } from '@coveline/catalogue';
import type { Answer } from '@coveline/project';
import type { Round, RoundItem } from './round.ts';
import { isShownOnRound } from './round.ts';

export interface Told {
  readonly status: 'met' | 'noSuchElement';
  readonly basis: string;
}

/** Null where nobody has looked, or where it cannot be shown by looking, measuring by hand or papers. */
export function toldOnRound(round: Round, demand: Demand): Told | null {
  if (!isShownOnRound(demand)) return null;
  const items = round.stops.flatMap((s) => s.items).filter((i) => i.shows.includes(demand.id));
  if (items.length === 0 || items.some((i) => i.answer === null)) return null;
  const absent = items.every((i) => i.answer?.state === 'notHere');
  if (absent)
    return { status: 'noSuchElement', basis: `On the round: not on this machine (${signed(items)})` };
  const good = items.filter((i) => i.answer?.state === 'asItShould');
  return good.length === 0
    ? null
    : { status: 'met', basis: `On the round: as it should be (${signed(good)})${wordsOf(good)}` };
}

const signed = (items: readonly RoundItem[]) =>
  [...new Set(items.map((i) => `${i.answer!.by}, ${i.answer!.on}`))].join('; ');

function wordsOf(items: readonly RoundItem[]): string {
  const words = items.map((i) => inWords(i.answer!)).filter((w) => w !== '');
  return words.length === 0 ? '' : `: ${words.join('; ')}`;
}

/** Reading and words of an answer, as one phrase. */
export function inWords({ reading, words }: Answer): string {
  return [reading, words].filter((w) => w.trim() !== '').join(', ');
}
