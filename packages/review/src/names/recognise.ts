import type { Part } from '@coveline/model';
import { type Noun, type NounEntry, nouns } from './nouns.ts';

export interface Recognised {
  readonly noun: Noun;
  readonly element: string;
  /** The word that told it, as the dictionary writes it. */
  readonly word: string;
  /** From the part's own name, or from the assembly that it belongs to. */
  readonly from: 'name' | 'assembly';
}

/**
 * What a part seems to be, by its own name or else by the innermost assembly that says anything. Null when no word is
 * known. A hint only.
 */
export function recognise(part: Part): Recognised | null {
  const own = headNoun(part.name);
  if (own) return { ...own, from: 'name' };
  for (const name of [...part.assembly].reverse()) {
    const hit = headNoun(name);
    // A screw in the pump unit is no pump, but a plain plate in it belongs to it; fasteners are named themselves.
    if (hit && hit.noun !== 'fastener') return { ...hit, from: 'assembly' };
  }
  return null;
}

interface Hit {
  readonly noun: Noun;
  readonly element: string;
  readonly word: string;
}

/** The word that names the thing: the last one in English and German ("jar guide"), the first before a "de" or "di". */
function headNoun(name: string): Hit | null {
  const text = ` ${plain(name)} `;
  const headFirst = / (de|du|des|del|di|della|d) /.test(text);
  let best: { entry: NounEntry; word: string; start: number; end: number } | null = null;
  for (const { entry, word } of dictionary) {
    const at = find(text, word, headFirst);
    if (at < 0) continue;
    const here = { entry, word, start: at, end: at + word.length };
    if (best === null || (headFirst ? isEarlier(here, best) : isLater(here, best))) best = here;
  }
  return best && { noun: best.entry.noun, element: best.entry.element, word: best.word };
}

interface Span {
  readonly start: number;
  readonly end: number;
}
/** Ends later; of two that end together, the longer one. */
const isLater = (a: Span, b: Span) => a.end > b.end || (a.end === b.end && a.start < b.start);
const isEarlier = (a: Span, b: Span) => a.start < b.start || (a.start === b.start && a.end > b.end);

const dictionary = nouns.flatMap((entry) => entry.words.map((w) => ({ entry, word: plain(w) })));

/** Position of a word: whole, with a plural s, or for five letters and more inside a compound. */
function find(text: string, word: string, first: boolean): number {
  const search = (needle: string) => (first ? text.indexOf(needle) : text.lastIndexOf(needle));
  const whole = Math.max(search(` ${word} `), search(` ${word}s `));
  if (whole >= 0) return whole + 1;
  return word.length >= 5 && !word.includes(' ') ? search(word) : -1;
}

/** Lower case without accents, digits or punctuation, camel case taken apart. */
function plain(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^a-z0-9-]+/g, ' ')
    .replace(/(?<![a-z])-|-(?![a-z])/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
