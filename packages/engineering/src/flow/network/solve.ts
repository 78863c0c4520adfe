/**
 * Steady flow in a network by the global gradient algorithm: E. Todini, S. Pilati, "A gradient algorithm for the
 * analysis of pipe networks" (1988), as in the hydraulics engines of the trade.
 */
import { cuthillMcKee, Envelope } from './envelope.ts';
import type { Link, Network, Pipe } from './network.ts';

export interface Fluid {
  readonly density: number;
  /** m2/s */
  readonly kinematic: number;
  readonly gravity: number;
}

export type FrictionLaw = (reynolds: number, relative: number) => number;

export interface NetworkState {
  readonly kind: 'solved';
  /** m3/s from `from` to `to`, one a link. */
  readonly flows: Float64Array;
  /** m, junctions first, then the fixed heads. */
  readonly heads: Float64Array;
  readonly iterations: number;
}

export type NetworkResult = NetworkState | { readonly kind: 'failed'; readonly reason: string };

/** Multiplications of one factorisation, about half a second; a circuit of 400 segments needs 1e5. */
const mostWork = 5e8;

/** Below this a pipe counts as still, m3/s. */
const still = 1e-10;

/** Head loss of a pipe at a positive flow. */
function pipeLoss(pipe: Pipe, flow: number, fluid: Fluid, law: FrictionLaw): number {
  const speed = flow / ((Math.PI / 4) * pipe.bore ** 2);
  const reynolds = (speed * pipe.bore) / fluid.kinematic;
  const friction = law(reynolds, pipe.roughness / pipe.bore);
  return (((friction * pipe.length) / pipe.bore + pipe.minor) * speed ** 2) / (2 * fluid.gravity);
}

/** Head loss from `from` to `to` and its derivative. */
function lossAndSlope(link: Link, flow: number, fluid: Fluid, law: FrictionLaw): readonly [number, number] {
  if (link.kind === 'pump') {
    const q = Math.max(flow, still);
    const drop = link.factor * q ** link.exponent;
    // Backward flow meets a steep wall: a pump has a check valve.
    const wall = flow < 0 ? 1e8 * flow : 0;
    return [drop - link.shutOff + wall, Math.max(1e-6, (link.exponent * drop) / q) + (flow < 0 ? 1e8 : 0)];
  }
  const size = Math.max(Math.abs(flow), still);
  const loss = pipeLoss(link, size, fluid, law);
  const step = 1e-6 * size;
  const slope = (pipeLoss(link, size + step, fluid, law) - loss) / step;
  const wall = link.oneWay && flow < 0 ? 1e8 : 0;
  return [
    Math.sign(flow) * (Math.abs(flow) < still ? (loss * Math.abs(flow)) / still : loss) + wall * flow,
    slope + wall,
  ];
}

/**
 * Flows and heads. `law` is a Darcy friction factor of Reynolds number and relative roughness. Fails with a sentence
 * when a junction hangs on nothing of fixed head or the iteration does not settle.
 */
export function solveNetwork(network: Network, fluid: Fluid, law: FrictionLaw): NetworkResult {
  const { junctions, fixed, links } = network;
  const n = junctions.length;
  const index = new Map([...junctions, ...fixed].map((node, i) => [node.id, i]));
  const from = links.map((link) => index.get(link.from)!);
  const to = links.map((link) => index.get(link.to)!);

  const lost = unconnected(n, from, to, fixed.length);
  if (lost >= 0)
    return {
      kind: 'failed',
      reason: `junction ${junctions[lost].id} is not connected to any tank or reservoir`,
    };

  const neighbours: number[][] = junctions.map(() => []);
  links.forEach((_, k) => {
    if (from[k] < n && to[k] < n && from[k] !== to[k]) {
      neighbours[from[k]].push(to[k]);
      neighbours[to[k]].push(from[k]);
    }
  });
  const order = cuthillMcKee(neighbours);
  const place = new Int32Array(n);
  for (let k = 0; k < n; k++) place[order[k]] = k;
  const first = Int32Array.from({ length: n }, (_, i) => i);
  for (let i = 0; i < n; i++)
    for (const j of neighbours[i]) first[place[i]] = Math.min(first[place[i]], place[j]);

  let work = 0;
  for (let i = 0; i < n; i++) work += (i - first[i] + 1) ** 2;
  if (work > mostWork)
    return {
      kind: 'failed',
      reason: 'the network is too large and entangled to be solved here: divide it into circuits',
    };

  const flows = Float64Array.from(links, (link) =>
    link.kind === 'pump'
      ? (link.shutOff / (2 * link.factor)) ** (1 / link.exponent)
      : (Math.PI / 4) * link.bore ** 2,
  );
  const heads = new Float64Array(n + fixed.length);
  fixed.forEach((node, i) => {
    heads[n + i] = node.head;
  });
  const conductance = new Float64Array(links.length);
  const offset = new Float64Array(links.length);

  for (let iteration = 1; iteration <= 200; iteration++) {
    const matrix = new Envelope(first);
    const right = new Float64Array(n);
    for (let i = 0; i < n; i++) right[place[i]] = -junctions[i].demand;
    links.forEach((link, k) => {
      const [loss, slope] = lossAndSlope(link, flows[k], fluid, law);
      conductance[k] = 1 / slope;
      offset[k] = flows[k] - loss / slope;
      const a = from[k];
      const b = to[k];
      if (a < n) {
        matrix.values[matrix.at(place[a], place[a])] += conductance[k];
        right[place[a]] -= offset[k] - (b < n ? 0 : conductance[k] * heads[b]);
      }
      if (b < n) {
        matrix.values[matrix.at(place[b], place[b])] += conductance[k];
        right[place[b]] += offset[k] + (a < n ? 0 : conductance[k] * heads[a]);
      }
      if (a < n && b < n && a !== b)
        matrix.values[matrix.at(Math.max(place[a], place[b]), Math.min(place[a], place[b]))] -=
          conductance[k];
    });
    if (!matrix.solve(right))
      return {
        kind: 'failed',
        reason: 'the equations of the network have no unique solution: look for parts without flow',
      };
    for (let i = 0; i < n; i++) heads[i] = right[place[i]];
    let change = 0;
    let total = 0;
    for (let k = 0; k < links.length; k++) {
      const next = offset[k] + conductance[k] * (heads[from[k]] - heads[to[k]]);
      change += Math.abs(next - flows[k]);
      total += Math.abs(next);
      flows[k] = next;
    }
    if (change <= 1e-10 * total + 1e-14) return { kind: 'solved', flows, heads, iterations: iteration };
  }
  return { kind: 'failed', reason: 'the flows did not settle within 200 steps' };
}

/** The first junction that no path joins to a fixed head, or -1. */
function unconnected(n: number, from: readonly number[], to: readonly number[], fixedCount: number): number {
  const reached = new Uint8Array(n + fixedCount).fill(1, n);
  for (let again = true; again; ) {
    again = false;
    for (let k = 0; k < from.length; k++)
      if (reached[from[k]] !== reached[to[k]]) {
        reached[from[k]] = reached[to[k]] = 1;
        again = true;
      }
  }
  return reached.indexOf(0);
}
