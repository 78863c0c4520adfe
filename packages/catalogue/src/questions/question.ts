/** What geometry cannot answer and is therefore asked at the machine. Our wording; the questions are common practice. */

/** Matters of the whole plant that are no machine element. */
export type Matter = 'use' | 'people' | 'chemistry' | 'proof' | 'change';

/** A number that belongs to an answer. */
export interface Reading {
  /** As in "time without tools". */
  readonly what: string;
  /** Unit in which it is kept, as `quantity` writes it; it may be typed in any unit of the same kind. */
  readonly unit: string;
}

export interface Question {
  readonly id: string;
  /** A key of `elements`, or a matter of the whole plant. */
  readonly about: string;
  readonly text: string;
  /** Why the answer matters. */
  readonly why: string;
  /** What a good answer looks like. */
  readonly good: string;
  /** How to find out, on the spot. */
  readonly how: string;
  readonly reading?: Reading;
  /** Ids of the requirements for which the answer is evidence; none where it only informs. */
  readonly shows: readonly string[];
}

interface Row {
  readonly id: string;
  readonly ask: string;
  readonly why: string;
  readonly good: string;
  readonly how: string;
  readonly reading?: readonly [what: string, unit: string];
  readonly shows?: readonly string[];
}

/** The questions about one element or matter. */
export function questionsAbout(about: string, rows: readonly Row[]): readonly Question[] {
  return rows.map(({ id, ask, why, good, how, reading, shows }) => ({
    id,
    about,
    text: ask,
    why,
    good,
    how,
    ...(reading ? { reading: { what: reading[0], unit: reading[1] } } : {}),
    shows: shows ?? [],
  }));
}
