/** Files that people try and that are not read: what they are, and what to give instead. */
interface Foreign {
  readonly is: string;
  readonly instead: string;
  readonly matches: (bytes: Uint8Array, head: string) => boolean;
}

const startsWith = (bytes: Uint8Array, ...values: number[]) => values.every((value, i) => bytes[i] === value);

const foreign: readonly Foreign[] = [
  {
    is: 'a compressed file (gzip)',
    instead: 'unpack it and give the file inside',
    matches: (bytes) => startsWith(bytes, 0x1f, 0x8b),
  },
  {
    is: 'a native file of a CAD program (compound document)',
    instead: 'open it there and export STEP',
    matches: (bytes) => startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0),
  },
  {
    is: 'an IGES file, which often loses solids',
    instead: 'export STEP',
    // Column 73 of every line holds the section: S for the start section (IGES 5.3, 2.2.1).
    matches: (_, head) => /^.{72}S {0,6}0*1\s/.test(head),
  },
  {
    is: 'a JSON glTF file with its geometry elsewhere',
    instead: 'export GLB, which is one file',
    matches: (_, head) => /^\s*\{/.test(head) && /"asset"\s*:/.test(head) && /"version"\s*:/.test(head),
  },
  {
    is: 'a PLY file',
    instead: 'export STL, or better STEP',
    matches: (_, head) => /^ply\r?\n/.test(head),
  },
  {
    is: 'a DXF drawing',
    instead: 'export the 3D model as STEP',
    matches: (_, head) => /^\s*0\s*\r?\n\s*SECTION\b/.test(head),
  },
  {
    is: 'a PDF document',
    instead: 'ask for the STEP file of the model',
    matches: (_, head) => head.startsWith('%PDF-'),
  },
  {
    is: 'a web page (a login page, perhaps, instead of the download)',
    instead: 'download the model again',
    matches: (_, head) => /^\s*<(!doctype\s+html|html)\b/i.test(head),
  },
  {
    is: 'a picture',
    instead: 'give a 3D model',
    matches: (bytes) => startsWith(bytes, 0x89, 0x50, 0x4e, 0x47) || startsWith(bytes, 0xff, 0xd8, 0xff),
  },
];

/** "it is …; do …" for a file that is known but not read; undefined for any other. `head`: its first bytes as Latin-1. */
export function foreignFormat(bytes: Uint8Array, head: string): { is: string; instead: string } | undefined {
  return foreign.find((format) => format.matches(bytes, head));
}
