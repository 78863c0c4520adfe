/** Dead legs: ends of the network of passages past which liquid flows by, with their length by both datums. */
import type { Model, Vec3 } from '@coveline/model';
import type { DeadLeg } from '../result.ts';
import type { Site } from '../site.ts';
import { pathDrawing } from './drawing.ts';
import type { Found } from './found.ts';
import type { Junction } from './junctions.ts';
import { type Edge, type Network, networkOf, otherEnd } from './network.ts';
import { type Passage, pointAt, radiusAt } from './passages.ts';
import { boxOf, type Piece } from './runs.ts';

/** From the wall of the main, over the bore: less is no branch but a flush cap. */
const leastRatio = 0.1;
/** A narrower piece counts for the bore when it is at least this long, in its own bores. A seal that stands in is not. */
const leastNarrow = 0.5;

export interface DeadEnds {
  readonly legs: readonly Found<DeadLeg>[];
  readonly network: Network;
  /** Passages that belong to a dead leg. */
  readonly dead: ReadonlySet<number>;
}

export function deadLegs(
  model: Model,
  passages: readonly Passage[],
  junctions: readonly Junction[],
  mains: Site['mains'],
): DeadEnds {
  const free = networkOf(passages, junctions);
  const named = mains.flatMap(({ parts }) => passagesOfMain(model, passages, parts));
  const pinned = new Set(
    mains.flatMap(({ parts }) => {
      const own = passagesOfMain(model, passages, parts);
      const flows = own.some((passage) => free.ofPassage[passage].some((e) => free.live[e] === 1));
      return flows
        ? []
        : own.sort((a, b) => lengthOf(passages[b]) - lengthOf(passages[a]) || a - b).slice(0, 1);
    }),
  );
  const network = pinned.size > 0 ? networkOf(passages, junctions, pinned) : free;
  const isNamed = (main: number): boolean => named.includes(main);
  const legs: Found<DeadLeg>[] = [];
  const dead = new Set<number>();
  network.nodes.forEach((node, n) => {
    if (node.junction >= 0 || node.isOpen || network.onward[n] < 0) return;
    const way = wayToFlow(network, n);
    const leg = way && legOf(model, passages, junctions, network, way, isNamed);
    if (!way || !leg) return;
    for (const { passage } of way.edges) dead.add(passage);
    legs.push(leg);
  });
  legs.sort((a, b) => b.place.ratioFromWall - a.place.ratioFromWall);
  return { legs, network, dead };
}

/** Passages with a wall of one of these parts. */
function passagesOfMain(model: Model, passages: readonly Passage[], parts: readonly string[]): number[] {
  const names = new Set(parts);
  return passages.flatMap(({ pieces }, p) =>
    pieces.some(({ duct }) => names.has(model.parts[duct.part].id)) ? [p] : [],
  );
}

const lengthOf = ({ from, to }: Passage): number => to - from;

interface Way {
  /** From the closed end to the flow. */
  readonly edges: readonly Edge[];
  /** The node of the closed end. */
  readonly end: number;
  /** The node where liquid flows by. */
  readonly mouth: number;
}

/** From a closed end through what is dead to where liquid flows; undefined where nothing flows. */
function wayToFlow({ edges, flows, onward }: Network, end: number): Way | undefined {
  const way: Edge[] = [];
  let n = end;
  while (onward[n] >= 0) {
    const edge = edges[onward[n]];
    way.push(edge);
    n = otherEnd(edge, n);
  }
  return flows[n] ? { edges: way, end, mouth: n } : undefined;
}

function legOf(
  model: Model,
  passages: readonly Passage[],
  junctions: readonly Junction[],
  { nodes, edges, live, ofPassage }: Network,
  way: Way,
  isNamed: (passage: number) => boolean,
): Found<DeadLeg> | undefined {
  const { junction } = nodes[way.mouth];
  if (junction < 0) return undefined;
  const [one, two] = junctions[junction].sides;
  const [end, root] = [way.edges[0], way.edges[way.edges.length - 1]];
  const side = one.passage === root.passage ? one : two;
  const mainSide = side === one ? two : one;
  const flowsIn = (passage: number): boolean =>
    ofPassage[passage].some((e) => live[e] === 1 && edges[e].nodes.includes(way.mouth));
  if (!flowsIn(mainSide.passage)) return undefined;
  const [branch, main] = [passages[side.passage], passages[mainSide.passage]];
  const fromAxis_mm = way.edges.reduce((sum, { from, to }) => sum + to - from, 0);
  const fromWall_mm = fromAxis_mm - side.toWall_mm;
  const spans = way.edges.map((edge) => clear(edge, edge === root ? side : undefined));
  const pieces = spans.flatMap(({ passage, from, to }) =>
    passages[passage].pieces
      .map((p) => ({ ...p, from: Math.max(p.from, from), to: Math.min(p.to, to) }))
      .filter((p) => p.to > p.from),
  );
  const atMouth = 2 * radiusAt(branch, side.at + (root.from >= side.at - 1e-9 ? 1 : -1) * side.toWall_mm);
  const bore_mm = pieces
    .filter((p) => p.to - p.from >= leastNarrow * 2 * p.radius)
    .reduce((least, p) => Math.min(least, 2 * p.radius), atMouth);
  const ratioFromWall = fromWall_mm / bore_mm;
  if (ratioFromWall < leastRatio) return undefined;
  const last = passages[end.passage];
  const closed = end.nodes[0] === way.end ? last.low : last.high;
  const parts = new Set([
    ...pieces.map(({ duct }) => duct.part),
    ...(closed.closedBy === undefined ? [] : [closed.closedBy]),
  ]);
  const branchPart = mouthPiece(branch, side.at, root).duct.part;
  const ids = [...parts].map((p) => model.parts[p].id).sort();
  const at_mm = pointAt(last, closed.at);
  const caveats = caveatsOf(model, closed, atMouth, bore_mm, way.edges.length);
  const flowsOn = flowsIn(side.passage);
  if (!isNamed(mainSide.passage))
    caveats.push(
      flowsOn
        ? 'Which way liquid flows was told from shape: it turns here, and this end of the straight tube is left aside. Name the main to be sure.'
        : 'The main was told from shape: the tube that is open or leads on at both ends. Name the main to be sure.',
    );
  const axis = [...spans]
    .reverse()
    .map(({ passage, from, to }) => [from, to].map((s) => pointAt(passages[passage], s)) as [Vec3, Vec3]);
  return {
    place: {
      parts: ids,
      at_mm,
      bounds_mm: boundsOf(passages, spans),
      branchPart: model.parts[branchPart].id,
      endPart: model.parts[closed.closedBy ?? branchPart].id,
      main_mm: 2 * radiusAt(main, mainSide.at),
      bore_mm,
      fromAxis_mm,
      fromWall_mm,
      ratioFromAxis: fromAxis_mm / bore_mm,
      ratioFromWall,
      from: [...pieces, ...main.pieces].every(({ duct }) => duct.by === 'cad') ? 'cad' : 'triangles',
      ...(caveats.length > 0 && { caveats }),
    },
    triangles: [...new Set(pieces.flatMap(({ duct }) => duct.triangles))],
    drawing: pathDrawing(axis, bore_mm / 2),
  };
}

/** The piece of a branch nearest to the main. */
function mouthPiece({ pieces }: Passage, at: number, { from, to }: Edge): Piece {
  const own = pieces.filter((p) => p.to > from && p.from < to);
  return at <= from ? own[0] : own[own.length - 1];
}

/** An edge without its stretch inside the main. */
function clear({ passage, from, to }: Edge, side: { at: number; toWall_mm: number } | undefined) {
  if (!side) return { passage, from, to };
  return Math.abs(from - side.at) < Math.abs(to - side.at)
    ? { passage, from: from + side.toWall_mm, to }
    : { passage, from, to: to - side.toWall_mm };
}

function caveatsOf(
  model: Model,
  { slit_mm, within }: Passage['low'],
  atMouth: number,
  bore_mm: number,
  edges: number,
): string[] {
  const caveats: string[] = [];
  const mm = (x: number): string => `${x.toPrecision(3)} mm`;
  if (bore_mm < atMouth)
    caveats.push(`The branch narrows from ${mm(atMouth)} to ${mm(bore_mm)}; the narrower bore counts.`);
  if (slit_mm > 0)
    caveats.push(`A slit of ${mm(slit_mm)} is drawn open at the closed end; it was taken as sealed.`);
  if (within)
    caveats.push(
      `"${model.parts[within.part].name}" stands in it before its end; the length runs to the end of the ring around it.`,
    );
  if (edges > 1) caveats.push('The dead leg bends; its length follows the axes of its pieces.');
  return caveats;
}

function boundsOf(
  passages: readonly Passage[],
  spans: readonly { passage: number; from: number; to: number }[],
): [Vec3, Vec3] {
  const boxes = spans.map(({ passage, from, to }) =>
    boxOf({ ...passages[passage], from, to, radius: radiusAt(passages[passage], (from + to) / 2) }, 0),
  );
  const bound = (k: 0 | 1, pick: (...values: number[]) => number): Vec3 => [
    pick(...boxes.map((b) => b[k][0])),
    pick(...boxes.map((b) => b[k][1])),
    pick(...boxes.map((b) => b[k][2])),
  ];
  return [bound(0, Math.min), bound(1, Math.max)];
}
