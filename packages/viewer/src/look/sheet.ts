import type { Vec3 } from '@coveline/model';

/** The colours that a view needs, sRGB 0 to 1. The same relations on both sheets. */
export interface Sheet {
  readonly steel: Vec3;
  readonly edge: Vec3;
  readonly ghostEdge: Vec3;
  /** How much of its colour a ghost keeps, so that it stands off the sheet. */
  readonly ghostShade: number;
  readonly cap: Vec3;
  readonly capHatch: Vec3;
  readonly water: Vec3;
  readonly waterRim: Vec3;
  readonly selected: Vec3;
  readonly kinds: Readonly<Record<PlaceKind, Vec3>>;
  /** Parts by area class (EN 1672-2), where they are coloured by it. */
  readonly areas: Readonly<Record<'food' | 'splash' | 'nonFood', Vec3>>;
  /** Shading of a face from straight ahead to edge on. */
  readonly lit: number;
  readonly shade: number;
}

/** What a place is, told by the shape of its sign. */
export type PlaceKind = 'liquid' | 'flat' | 'gap' | 'corner' | 'hollow' | 'fastener' | 'reach' | 'air';

export type SheetName = 'light' | 'dark';

export const sheets: Readonly<Record<SheetName, Sheet>> = {
  light: {
    steel: rgb(0xe2e6e9),
    edge: rgb(0x7d8790),
    ghostEdge: rgb(0x8f9aa5),
    ghostShade: 0.6,
    cap: rgb(0xb3bcc4),
    capHatch: rgb(0x5b6675),
    water: rgb(0x1f6f9f),
    waterRim: rgb(0x12324a),
    selected: rgb(0xa9c3dc),
    kinds: {
      liquid: rgb(0x1f6f9f),
      flat: rgb(0x1f6f9f),
      gap: rgb(0x8a5c0c),
      corner: rgb(0x6b4a8a),
      hollow: rgb(0x5b6675),
      fastener: rgb(0x4d5866),
      reach: rgb(0x2f6b4c),
      air: rgb(0x4d6279),
    },
    areas: { food: rgb(0x7fb2d3), splash: rgb(0xbfd6e3), nonFood: rgb(0xe2e6e9) },
    lit: 1.04,
    shade: 0.66,
  },
  dark: {
    steel: rgb(0xc3cbd2),
    edge: rgb(0x12171d),
    ghostEdge: rgb(0x8a96a3),
    ghostShade: 1,
    cap: rgb(0x4b5661),
    capHatch: rgb(0xa3aebb),
    water: rgb(0x3f97c9),
    waterRim: rgb(0xbfe2f5),
    selected: rgb(0x8fb7dc),
    kinds: {
      liquid: rgb(0x6fb9e2),
      flat: rgb(0x6fb9e2),
      gap: rgb(0xe0ae57),
      corner: rgb(0xc3a2e2),
      hollow: rgb(0xb6c0cc),
      fastener: rgb(0xb6c0cc),
      reach: rgb(0x7fc49f),
      air: rgb(0xa5bbd2),
    },
    areas: { food: rgb(0x64b4e4), splash: rgb(0x8fb0c6), nonFood: rgb(0xc3cbd2) },
    lit: 0.84,
    shade: 0.36,
  },
};

function rgb(hex: number): Vec3 {
  return [((hex >> 16) & 255) / 255, ((hex >> 8) & 255) / 255, (hex & 255) / 255];
}
