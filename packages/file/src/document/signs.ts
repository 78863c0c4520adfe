import { type Sign, toneOf } from '../picture/palette.ts';

/** Paths in a box of 20 by 20. The shape tells the kind; the tone only repeats it. */
const paths: Readonly<Record<Sign, string>> = {
  liquid: 'M2 10a8 4.2 0 1 0 16 0a8 4.2 0 1 0 -16 0z',
  flat: 'M2.5 10a7.5 3.6 0 1 0 15 0a7.5 3.6 0 1 0 -15 0z',
  gap: 'M7 3.5v13M13 3.5v13',
  corner: 'M5 4v12h12',
  hollow: 'M3.5 10a6.5 6.5 0 1 0 13 0a6.5 6.5 0 1 0 -13 0z',
  fastener: 'M10 2.5l6.5 3.75v7.5L10 17.5l-6.5-3.75v-7.5z',
  reach: 'M2.5 15a7.5 7.5 0 0 1 15 0',
  air: 'M4 4.5l6 5l6-5M4 10.5l6 5l6-5',
  asked: 'M5 3.5h10v13h-10zM8 8h4M8 12h4',
};

/** Each sign as an SVG document. */
export const signImages: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(paths).map(([sign, path]) => {
    const tone = `rgb(${toneOf[sign as Sign].join(',')})`;
    const fill = sign === 'liquid' ? tone : 'none';
    return [
      sign,
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 20"><path d="${path}" fill="${fill}" stroke="${tone}" stroke-width="2"/></svg>`,
    ];
  }),
);
