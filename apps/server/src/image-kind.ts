/** Pictures that a browser shows and the file prints, told by how they begin. */
const kinds = [
  { type: 'image/jpeg', begins: [0xff, 0xd8, 0xff] },
  { type: 'image/png', begins: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
] as const;

export type ImageType = (typeof kinds)[number]['type'];

/** Undefined for what is no JPEG and no PNG. */
export function imageType(first: Uint8Array): ImageType | undefined {
  return kinds.find(({ begins }) => begins.every((byte, i) => first[i] === byte))?.type;
}
