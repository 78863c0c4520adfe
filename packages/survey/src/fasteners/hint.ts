/** What a part's name says of fasteners: a hint, never more. */

export interface Hint {
  readonly what?: 'bolt' | 'nut' | 'rod';
  /** Nominal diameter of a metric thread, mm. */
  readonly diameter_mm?: number;
}

const words: readonly (readonly [Hint['what'] & string, RegExp])[] = [
  ['nut', /\bnuts?\b|mutter|\bmoer\b|\bécrou|\btuerca|\bdado\b|iso ?4032|iso ?4035|din ?(934|985|1587)\b/i],
  ['rod', /threaded rod|\bstuds?\b|gewindest|draadeind|tige filet|varilla roscada|din ?97[56]\b/i],
  [
    'bolt',
    /\bbolts?\b|\bscrews?\b|schraube|\bbout\b|schroef|\bvis\b|\bboulon|tornillo|\bvite\b|iso ?40(14|17)|iso ?4762|iso ?7380|din ?(912|93[13])\b/i,
  ],
];

export function hintOf(name: string): Hint {
  const plain = name.replaceAll('_', ' ');
  const what = words.find(([, pattern]) => pattern.test(plain))?.[0];
  const size = /\bM(\d+(?:[.,]\d+)?)(?=$|[^\w.,]|x)/i.exec(plain);
  const diameter = size ? Number(size[1].replace(',', '.')) : undefined;
  return {
    ...(what ? { what } : {}),
    ...(diameter !== undefined && diameter >= 1 && diameter <= 64 ? { diameter_mm: diameter } : {}),
  };
}
