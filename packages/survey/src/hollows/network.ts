/**
 * What flows through and what does not. Passages are the edges of a graph, their junctions and ends its nodes; liquid
 * flows by where it can come in at one open end and leave at another. Closed ends are taken away one after the other,
 * with all that leads to them only: what goes is dead, and the node where it stops is the mouth of a dead leg.
 */
import type { Junction, Side } from './junctions.ts';
import { type Passage, radiusAt } from './passages.ts';

export interface Edge {
  readonly passage: number;
  /** Along the passage; `from < to`. */
  readonly from: number;
  readonly to: number;
  readonly nodes: readonly [number, number];
}

export interface Node {
  /** Index of the junction, or -1 for an end of a passage. */
  readonly junction: number;
  /** For an end: whether liquid can pass there. */
  readonly isOpen: boolean;
}

export interface Network {
  readonly nodes: readonly Node[];
  readonly edges: readonly Edge[];
  /** Per edge: 1 where liquid flows through. */
  readonly live: Uint8Array;
  /** Per node: 1 where liquid flows by. */
  readonly flows: Uint8Array;
  /** Per passage: its edges, in order along it. */
  readonly ofPassage: readonly (readonly number[])[];
  /** Per dead node: the edge that leads on towards the flow, -1 where there is none. */
  readonly onward: Int32Array;
}

/** What ends this soon behind the other's wall, of its diameter, is the end of the passage and no arm of its own. */
const leastArm = 0.1;

/** `pinned`: passages that are known to have liquid flowing through. */
export function networkOf(
  passages: readonly Passage[],
  junctions: readonly Junction[],
  pinned: ReadonlySet<number> = new Set(),
): Network {
  const nodes: Node[] = junctions.map((_, junction) => ({ junction, isOpen: false }));
  const edges: Edge[] = [];
  const sides = passages.map((): { side: Side; node: number }[] => []);
  junctions.forEach(({ sides: both }, node) => {
    for (const side of both) sides[side.passage].push({ side, node });
  });
  passages.forEach((passage, p) => {
    const stops = sides[p]
      .sort((a, b) => a.side.at - b.side.at || a.node - b.node)
      .map(({ side, node }) => ({ at: side.at, node, wall: side.toWall_mm }));
    const first = stops[0];
    const last = stops[stops.length - 1];
    const arm = (at: number): number => 2 * leastArm * radiusAt(passage, at);
    const end = (isOpen: boolean): number => nodes.push({ junction: -1, isOpen }) - 1;
    const { low, high } = passage;
    const chain = stops.map(({ at, node }) => ({ at, node }));
    if (!first || first.at - low.at > first.wall + arm(low.at))
      chain.unshift({ at: low.at, node: end(low.closedBy === undefined) });
    if (!last || high.at - last.at > last.wall + arm(high.at))
      chain.push({ at: high.at, node: end(high.closedBy === undefined) });
    for (let k = 0; k + 1 < chain.length; k++) {
      const [a, b] = [chain[k], chain[k + 1]];
      edges.push({ passage: p, from: a.at, to: b.at, nodes: [a.node, b.node] });
    }
  });
  const pruned = prune(nodes, edges, pinned);
  const flows = new Uint8Array(nodes.length);
  const ofPassage = passages.map((): number[] => []);
  edges.forEach((edge, e) => {
    ofPassage[edge.passage].push(e);
    if (pruned.live[e]) for (const n of edge.nodes) flows[n] = 1;
  });
  return { nodes, edges, ofPassage, flows, ...pruned };
}

function prune(
  nodes: readonly Node[],
  edges: readonly Edge[],
  pinned: ReadonlySet<number>,
): Pick<Network, 'live' | 'onward'> {
  const live = new Uint8Array(edges.length).fill(1);
  const onward = new Int32Array(nodes.length).fill(-1);
  const at = nodes.map((): number[] => []);
  edges.forEach((edge, e) => {
    for (const n of edge.nodes) at[n].push(e);
  });
  const left = at.map((own) => own.length);
  // Where there is one open end only, the closed ones take everything away up to it.
  const queue = nodes.flatMap(({ isOpen }, n) => (left[n] === 1 && !isOpen ? [n] : []));
  for (let i = 0; i < queue.length; i++) {
    const n = queue[i];
    const e = at[n].find((k) => live[k] === 1);
    if (e === undefined || pinned.has(edges[e].passage)) continue;
    live[e] = 0;
    onward[n] = e;
    const o = otherEnd(edges[e], n);
    if (--left[o] === 1 && !nodes[o].isOpen) queue.push(o);
  }
  return { live, onward };
}

export function otherEnd({ nodes: [a, b] }: Edge, node: number): number {
  return a === node ? b : a;
}
