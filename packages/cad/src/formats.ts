export type FormatId = 'step' | 'stl' | 'obj' | '3mf' | 'glb';

export interface Format {
  readonly id: FormatId;
  readonly name: string;
  /** Lower case, without the dot. */
  readonly extensions: readonly string[];
  /** What of the file reaches the model, in a few words, for help texts. */
  readonly carries: string;
  /** False where the file states no length unit, so that the reader has to be told. */
  readonly hasUnit: boolean;
}

/** Every format that `readModel` reads, best first. */
export const formats: readonly Format[] = [
  {
    id: 'step',
    name: 'STEP (AP203, AP214, AP242)',
    extensions: ['step', 'stp', 'p21'],
    carries: 'exact faces and edges, assembly, names, colours',
    hasUnit: true,
  },
  {
    id: '3mf',
    name: '3MF',
    extensions: ['3mf'],
    carries: 'triangles, objects and components, names, colours',
    hasUnit: true,
  },
  {
    id: 'glb',
    name: 'glTF binary (GLB)',
    extensions: ['glb'],
    carries: 'triangles, node tree, names, colours',
    hasUnit: true,
  },
  { id: 'stl', name: 'STL (ASCII and binary)', extensions: ['stl'], carries: 'triangles', hasUnit: false },
  {
    id: 'obj',
    name: 'Wavefront OBJ',
    extensions: ['obj'],
    carries: 'triangles, object names',
    hasUnit: false,
  },
];
