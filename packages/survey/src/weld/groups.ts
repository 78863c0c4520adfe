/** Disjoint groups of the numbers 0 to n - 1; the lowest member stands for its group. */
export interface Groups {
  readonly parent: Int32Array;
}

export function newGroups(n: number): Groups {
  return { parent: Int32Array.from({ length: n }, (_, i) => i) };
}

/** The lowest member of the group of `i`. */
export function groupOf({ parent }: Groups, i: number): number {
  while (parent[i] !== i) {
    parent[i] = parent[parent[i]];
    i = parent[i];
  }
  return i;
}

export function unite(groups: Groups, a: number, b: number): void {
  const x = groupOf(groups, a);
  const y = groupOf(groups, b);
  if (x !== y) groups.parent[Math.max(x, y)] = Math.min(x, y);
}

/** Members of every group, ascending; groups in the order of their lowest member. */
export function membersOf(groups: Groups, belongs: (i: number) => boolean = () => true): number[][] {
  const members = new Map<number, number[]>();
  for (let i = 0; i < groups.parent.length; i++) {
    if (!belongs(i)) continue;
    const g = groupOf(groups, i);
    const list = members.get(g);
    if (list) list.push(i);
    else members.set(g, [i]);
  }
  return [...members.values()];
}
