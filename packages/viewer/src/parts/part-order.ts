/** How a part is shown. */
export type PartState = 'shown' | 'ghost' | 'hidden';

/**
 * Writes the corners of all shown parts, then those of all ghosts, into `index`. `first` holds the first element
 * of each part and the number of all at the end; an element has `size` corners.
 * Returns how many corners are shown and how many are ghosts.
 */
export function orderByState(
  first: Uint32Array,
  size: number,
  state: (part: number) => PartState,
  index: Uint32Array,
): { shown: number; ghost: number } {
  const parts = first.length - 1;
  let at = 0;
  const write = (wanted: PartState) => {
    const from = at;
    for (let part = 0; part < parts; part++) {
      if (state(part) !== wanted) continue;
      const end = first[part + 1] * size;
      for (let corner = first[part] * size; corner < end; corner++) index[at++] = corner;
    }
    return at - from;
  };
  const shown = write('shown');
  return { shown, ghost: write('ghost') };
}
