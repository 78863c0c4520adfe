/** Standard tube sizes: outside diameter and wall in mm. */
export interface TubeSize {
  readonly outside: number;
  readonly wall: number;
}

const inch = 25.4;

export const tubes: Readonly<Record<string, Readonly<Record<string, TubeSize>>>> = {
  /** EN 10357:2014 series A, carried on from DIN 11850:1985 series 2 (secondary copy). */
  en10357a: {
    DN25: { outside: 29, wall: 1.5 },
    DN40: { outside: 41, wall: 1.5 },
    DN50: { outside: 53, wall: 1.5 },
    DN65: { outside: 70, wall: 2 },
    DN80: { outside: 85, wall: 2 },
    DN100: { outside: 104, wall: 2 },
    DN125: { outside: 129, wall: 2 },
    DN150: { outside: 154, wall: 2 },
  },
  /** ASME BPE, part DT, from memory. */
  asmebpe: {
    '1/2': { outside: inch / 2, wall: 1.65 },
    '3/4': { outside: 0.75 * inch, wall: 1.65 },
    '1': { outside: inch, wall: 1.65 },
    '1 1/2': { outside: 1.5 * inch, wall: 1.65 },
    '2': { outside: 2 * inch, wall: 1.65 },
    '2 1/2': { outside: 2.5 * inch, wall: 1.65 },
    '3': { outside: 3 * inch, wall: 1.65 },
    '4': { outside: 4 * inch, wall: 2.11 },
    '6': { outside: 6 * inch, wall: 2.77 },
  },
  /** ISO 2037, common sizes, from memory. */
  iso2037: {
    '25': { outside: 25, wall: 1.2 },
    '33.7': { outside: 33.7, wall: 1.2 },
    '38': { outside: 38, wall: 1.2 },
    '51': { outside: 51, wall: 1.2 },
    '63.5': { outside: 63.5, wall: 1.6 },
    '76.1': { outside: 76.1, wall: 1.6 },
    '101.6': { outside: 101.6, wall: 2 },
  },
};
