import { type Scene, twinKey } from '../scene.ts';

/** Parts of one assembly are told together, unless the assembly is the whole machine: then parts of one shape. */
export function unitOf(scene: Scene, part: number): string {
  const { assembly } = scene.known.model.parts[part];
  return assembly.length >= 2 ? assembly.join('/') : twinKey(scene, part);
}

/** A list sorted into groups, in the order in which the groups first come. */
export function groupedBy<T>(list: readonly T[], key: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const k = key(one);
    const group = groups.get(k);
    if (group) group.push(one);
    else groups.set(k, [one]);
  }
  return [...groups.values()];
}
