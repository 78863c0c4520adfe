/** Tones of pictures and pages: ink, paper, one tone a kind. No tone means good or bad. */
export type Rgb = readonly [number, number, number];

export const tones = {
  paper: [255, 255, 255],
  ink: [27, 36, 48],
  steel: [200, 207, 213],
  cut: [214, 205, 190],
  highlight: [226, 200, 146],
  water: [31, 111, 159],
  brass: [154, 107, 21],
  plum: [109, 58, 124],
  moss: [79, 111, 100],
} as const satisfies Record<string, Rgb>;

export type Sign = 'liquid' | 'flat' | 'gap' | 'corner' | 'hollow' | 'fastener' | 'reach' | 'air' | 'asked';

export const toneOf: Readonly<Record<Sign, Rgb>> = {
  liquid: tones.water,
  flat: tones.water,
  gap: tones.brass,
  corner: tones.plum,
  hollow: tones.water,
  fastener: tones.ink,
  reach: tones.moss,
  air: tones.moss,
  asked: tones.ink,
};

export function mix(a: Rgb, b: Rgb, share: number): Rgb {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share];
}
