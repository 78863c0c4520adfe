/**
 * Blind channels: straight round passages with one open end, or that open into another one which nothing flows through.
 * A bore that is filled (a bolt in its hole) is left out, and so is a dead leg.
 */
import type { Model } from '@coveline/model';
import type { BlindChannel, SurveySettings } from '../result.ts';
import type { DeadEnds } from './dead-legs.ts';
import { pathDrawing } from './drawing.ts';
import type { Found } from './found.ts';
import type { Junction } from './junctions.ts';
import { type Looks, opensAround } from './looks.ts';
import type { Network } from './network.ts';
import { type End, type Passage, pointAt, radiusAt } from './passages.ts';
import { boxOf } from './runs.ts';

/** What is wider is a vessel, not a channel (common practice: a hand gets in). */
const widestMouth_mm = 60;
/** Ratios are told to this, so that one that is drawn at the limit is not lost to the last digit. */
const rounding = 1e-6;

export function blindChannels(
  model: Model,
  passages: readonly Passage[],
  junctions: readonly Junction[],
  { network, dead }: DeadEnds,
  looks: Looks,
  settings: SurveySettings,
): Found<BlindChannel>[] {
  return passages.flatMap((passage, p) => {
    if (dead.has(p)) return [];
    const ends = openToOneSide(passage, p, network, junctions);
    if (!ends || ends.closed.slit_mm > settings.contact_mm) return [];
    if (!ends.isJoined && opensSideways(looks, passage, ends)) return [];
    const found = channelOf(model, passage, ends, settings.leastBlindRatio);
    return found ? [found] : [];
  });
}

interface Ends {
  readonly closed: End;
  /** Where the mouth is, along the passage. */
  readonly mouth: number;
  /** From the mouth to the closed end. */
  readonly sense: 1 | -1;
  /** Whether another passage opens into it. */
  readonly isJoined: boolean;
}

function openToOneSide(
  { low, high }: Passage,
  p: number,
  { nodes, edges, live, ofPassage }: Network,
  junctions: readonly Junction[],
): Ends | undefined {
  const own = ofPassage[p];
  if (own.length === 0 || own.some((e) => live[e] === 1)) return undefined;
  const [first, last] = [own[0], own[own.length - 1]];
  const lowNode = nodes[edges[first].nodes[0]];
  const highNode = nodes[edges[last].nodes[1]];
  const isClosed = (n: typeof lowNode): boolean => n.junction < 0 && !n.isOpen;
  if (isClosed(lowNode) === isClosed(highNode)) return undefined;
  const sense = isClosed(highNode) ? 1 : -1;
  const [closed, open, node] = sense > 0 ? [high, low, lowNode] : [low, high, highNode];
  const side = junctions[node.junction]?.sides.find(({ passage }) => passage === p);
  const mouth = side ? side.at + sense * side.toWall_mm : open.at;
  return { closed, mouth, sense, isJoined: own.length > 1 };
}

function channelOf(
  model: Model,
  passage: Passage,
  { closed, mouth, sense }: Ends,
  leastRatio: number,
): Found<BlindChannel> | undefined {
  const mouth_mm = 2 * radiusAt(passage, mouth + sense * 1e-6);
  const depth_mm = sense * (closed.at - mouth);
  const ratio = depth_mm / mouth_mm;
  // Of a stepped bore, every piece as a bore of its own.
  const inner = passage.pieces
    .map((piece) => {
      const depth =
        sense * (closed.at - (sense > 0 ? Math.max(piece.from, mouth) : Math.min(piece.to, mouth)));
      return { bore_mm: 2 * piece.radius, depth_mm: depth, ratio: depth / (2 * piece.radius) };
    })
    .reduce((worst, piece) => (piece.ratio > worst.ratio ? piece : worst));
  const worst = Math.max(ratio, inner.ratio);
  if (mouth_mm > widestMouth_mm || worst < leastRatio - rounding) return undefined;
  const [at_mm, bottom] = [pointAt(passage, mouth), pointAt(passage, closed.at)];
  const radius = Math.max(...passage.pieces.map((piece) => piece.radius));
  const parts = new Set(passage.pieces.map(({ duct }) => duct.part));
  if (closed.closedBy !== undefined) parts.add(closed.closedBy);
  return {
    place: {
      parts: [...parts].map((p) => model.parts[p].id).sort(),
      at_mm,
      bounds_mm: boxOf(
        { ...passage, radius, from: Math.min(mouth, closed.at), to: Math.max(mouth, closed.at) },
        0,
      ),
      depth_mm,
      mouth_mm,
      ratio,
      from: passage.pieces.every(({ duct }) => duct.by === 'cad') ? 'cad' : 'triangles',
      ...(inner.ratio > ratio + rounding && { inner }),
    },
    triangles: [...new Set(passage.pieces.flatMap(({ duct }) => duct.triangles))],
    drawing: pathDrawing([[at_mm, bottom]], mouth_mm / 2),
  };
}

/** Distances from the bottom, as shares of the radius, at which one looks around for a way out to the side. */
const stations = [0.15, 0.6, 1.1];

/** Whether a bore that is barred ahead opens to the side near its bottom, into something that is no round passage. */
function opensSideways(looks: Looks, passage: Passage, { closed, mouth, sense }: Ends): boolean {
  const radius = radiusAt(passage, closed.at);
  const deepest = sense * (closed.at - mouth);
  return stations
    .filter((station) => station * radius < withinMouth * deepest)
    .some((station) =>
      opensAround(looks, pointAt(passage, closed.at - sense * station * radius), passage.direction, radius),
    );
}

/** Of the depth: nearer to the mouth one looks out of it. */
const withinMouth = 0.9;
