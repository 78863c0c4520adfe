import type { Kind } from './kind.ts';

export interface Sign {
  /** Path in a box of 20 by 20. */
  readonly d: string;
  readonly filled: boolean;
}

/** The kind is told by the shape; the tone only repeats it. */
export const signs: Readonly<Record<Kind, Sign>> = {
  // A lens: liquid seen from the side. Filled where it stands, open where only a film stays on a flat face.
  liquid: { d: 'M2 10a8 4.2 0 1 0 16 0a8 4.2 0 1 0 -16 0z', filled: true },
  flat: { d: 'M2.5 10a7.5 3.6 0 1 0 15 0a7.5 3.6 0 1 0 -15 0z', filled: false },
  gap: { d: 'M7 3.5v13M13 3.5v13', filled: false },
  corner: { d: 'M5 4v12h12', filled: false },
  hollow: { d: 'M3.5 10a6.5 6.5 0 1 0 13 0a6.5 6.5 0 1 0 -13 0z', filled: false },
  fastener: { d: 'M10 2.5l6.5 3.75v7.5L10 17.5l-6.5-3.75v-7.5z', filled: false },
  reach: { d: 'M2.5 15a7.5 7.5 0 0 1 15 0', filled: false },
  air: { d: 'M4 4.5l6 5l6-5M4 10.5l6 5l6-5', filled: false },
  asked: { d: 'M5 3.5h10v13h-10zM8 8h4M8 12h4', filled: false },
};
