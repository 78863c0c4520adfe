/** Text as the document can show it: nothing is swapped for another sign silently, nothing runs off the page. */
import { coveredCodePoints } from './font.ts';

/** Longer texts are cut; no name in a drawing office needs more. */
const longest = 4000;
/** A word longer than this may be broken anywhere. */
const longestWord = 24;

export interface Printer {
  /** The text with every character that the font lacks written as its code point, such as [U+05D0]. */
  readonly text: (value: string) => string;
  /** Cut to a length in characters, with an ellipsis. */
  readonly short: (value: string, most: number) => string;
  /** Code points that had to be written out, in order. */
  readonly missing: () => readonly number[];
}

export function newPrinter(): Printer {
  const covered = coveredCodePoints();
  const missing = new Set<number>();
  const text = (value: string): string => {
    let out = '';
    let lacking: number[] = [];
    const flush = (): void => {
      if (lacking.length > 0) out += `[${lacking.map(codeName).join(' ')}]`;
      lacking = [];
    };
    for (const letter of cut(value.normalize('NFC').replace(/\s+/g, ' '), longest)) {
      const code = letter.codePointAt(0) as number;
      if (covered.has(code) && !isInvisible(code)) {
        flush();
        out += letter;
      } else {
        missing.add(code);
        lacking.push(code);
      }
    }
    flush();
    return breakable(out);
  };
  return {
    text,
    short: (value, most) => text(cut(value, most)),
    missing: () => [...missing].sort((a, b) => a - b),
  };
}

function cut(value: string, most: number): string {
  const letters = [...value];
  return letters.length <= most ? value : `${letters.slice(0, most - 1).join('')}…`;
}

/** Marks that turn the direction of text around, joiners and the like: they could make a line read as another. */
function isInvisible(code: number): boolean {
  return (
    (code >= 0x200b && code <= 0x200f) ||
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2060 && code <= 0x206f) ||
    code === 0xfeff ||
    code === 0xad ||
    code < 0x20 ||
    (code >= 0x7f && code < 0xa0)
  );
}

function codeName(code: number): string {
  return `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}

/** Zero width spaces after separators, and inside words that no line could hold. */
function breakable(value: string): string {
  return value
    .split(' ')
    .map((word) =>
      word.length <= longestWord
        ? word
        : (word.match(/.{1,12}/gu) ?? []).join('\u200b').replace(/([/_\\-])(?!\u200b)/g, '$1\u200b'),
    )
    .join(' ');
}
