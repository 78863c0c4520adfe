/**
 * Divides a triangle by the answer to a question that can be asked at any of its points: "which kind are you?" The
 * triangle is halved at its longest edge until it is small, and of one kind or cut by a straight border. Where the
 * answer changes on its edges is found by halving, so that a straight border comes out exact at any fineness.
 */
import { distance, type Point, write } from './bisect.ts';
import { type Border, type Borders, halves, noBorders } from './borders.ts';
import { type Pieces, sew } from './pieces.ts';

/** The kind of a point, a small whole number; mm. */
export type Kind = (x: number, y: number, z: number) => number;

export interface Division {
  readonly kind: Kind;
  /** As `kind`, asked once in the middle of each piece, just before it is handed to `take`. */
  readonly middle: Kind;
  /** Told of each piece: its kind, area in mm2, and the point where `middle` was asked. */
  readonly take: (kind: number, area: number, x: number, y: number, z: number) => void;
  /** Kinds from this on are gathered into patches. */
  readonly gatherFrom: number;
  readonly pieces: Pieces;
  /** A triangle is looked at as a whole when no edge is longer than this, mm. */
  readonly size_mm: number;
}

interface Corner extends Point {
  readonly kind: number;
}

/** Where the border does not run straight through a triangle it is halved, down to this share of the size. */
const finest = 1 / 4;
/** Halvings that find a border on an edge: to 1/512 of it. */
const halvings = 8;
/** Points are asked this share nearer to the middle of the triangle, so that none lies on its edges. */
const inset = 1e-4;
/** How far beside the middle of a cut is asked, as a share of the longest edge: what a curved border may be off. */
const probe = 0.012;
/** Tips smaller than this share of the longest edge squared are not worth a look. */
const negligible = 1e-3;

/** `corners`: nine numbers at `at`, xyz per corner. */
export function divide(corners: Float64Array, at: number, division: Division): Borders {
  const c = corners;
  const mx = (c[at] + c[at + 3] + c[at + 6]) / 3;
  const my = (c[at + 1] + c[at + 4] + c[at + 7]) / 3;
  const mz = (c[at + 2] + c[at + 5] + c[at + 8]) / 3;
  const kind: Kind = (x, y, z) =>
    division.kind(x + (mx - x) * inset, y + (my - y) * inset, z + (mz - z) * inset);
  const corner = (i: number): Corner => cornerAt(c[i], c[i + 1], c[i + 2], kind);
  return within(corner(at), corner(at + 3), corner(at + 6), { ...division, kind });
}

function cornerAt(x: number, y: number, z: number, kind: Kind): Corner {
  return { x, y, z, kind: kind(x, y, z) };
}

function within(p: Corner, q: Corner, r: Corner, d: Division): Borders {
  const pq = distance(p, q);
  const qr = distance(q, r);
  const rp = distance(r, p);
  const longest = Math.max(pq, qr, rp);
  if (!(longest > d.size_mm)) {
    const isTiny = longest <= d.size_mm * finest;
    if (p.kind === q.kind && q.kind === r.kind) {
      const middle = middleOf(p, q, r);
      if (d.middle(middle.x, middle.y, middle.z) === p.kind || isTiny) return whole(p, q, r, p.kind, d);
    } else {
      const cut = cutOf(p, q, r, d);
      if (isTiny || isStraight(cut, longest, d)) return layCut(cut, d);
    }
  }
  if (pq === longest) return halve(p, q, r, d);
  if (qr === longest) {
    const [a, b, c] = halve(q, r, p, d);
    return [c, a, b];
  }
  const [a, b, c] = halve(r, p, q, d);
  return [b, c, a];
}

function halve(p: Corner, q: Corner, r: Corner, d: Division): Borders {
  const m = cornerAt((p.x + q.x) / 2, (p.y + q.y) / 2, (p.z + q.z) / 2, d.kind);
  const [pm, mr, rp] = within(p, m, r, d);
  const [mq, qr, rm] = within(m, q, r, d);
  sew(d.pieces, mr, rm);
  return [halves(pm, mq), qr, rp];
}

/** A piece that `middle` was just asked for. */
function whole(p: Corner, q: Corner, r: Corner, kind: number, d: Division): Borders {
  const piece = lay(p, q, r, kind, d);
  if (piece < 0) return noBorders;
  const edge = [0, 1, piece];
  return [edge, edge, edge];
}

/** One piece of a cut triangle: a triangle, its kind, and which stretches of the edges of the whole it touches. */
interface CutPiece {
  readonly corners: readonly [Corner, Corner, Corner];
  readonly kind: number;
  /** Edge of the whole (0, 1, 2), from and to along it. */
  readonly touches: readonly (readonly [edge: number, from: number, to: number])[];
}

/** Pieces of a triangle whose corners are not of one kind, in order of what they touch. */
function cutOf(p: Corner, q: Corner, r: Corner, d: Division): readonly CutPiece[] {
  if (q.kind === r.kind) return cutOff(p, q, r, 0, d);
  if (r.kind === p.kind) return cutOff(q, r, p, 1, d);
  if (p.kind === q.kind) return cutOff(r, p, q, 2, d);
  return cutInThree(p, q, r, d);
}

/** Corner p is of another kind than q and r; it is corner `first` of the whole. */
function cutOff(p: Corner, q: Corner, r: Corner, first: number, d: Division): readonly CutPiece[] {
  const s = change(p, q, d);
  const t = change(p, r, d);
  const a = between(p, q, s);
  const b = between(p, r, t);
  const [pq, qr, rp] = [first, (first + 1) % 3, (first + 2) % 3];
  return [
    {
      corners: [p, a, b],
      kind: p.kind,
      touches: [
        [pq, 0, s],
        [rp, 1 - t, 1],
      ],
    },
    {
      corners: [a, q, r],
      kind: q.kind,
      touches: [
        [pq, s, 1],
        [qr, 0, 1],
      ],
    },
    { corners: [a, r, b], kind: q.kind, touches: [[rp, 0, 1 - t]] },
  ];
}

/** Three corners of three kinds: each has the part around it. */
function cutInThree(p: Corner, q: Corner, r: Corner, d: Division): readonly CutPiece[] {
  const corners = [p, q, r];
  const at = corners.map((c, i) => change(c, corners[(i + 1) % 3], d));
  const on = corners.map((c, i) => between(c, corners[(i + 1) % 3], at[i]));
  const m = middleOf(on[0], on[1], on[2]);
  return corners.flatMap((c, i): CutPiece[] => {
    const before = (i + 2) % 3;
    return [
      { corners: [on[before], c, m], kind: c.kind, touches: [[before, at[before], 1]] },
      { corners: [c, on[i], m], kind: c.kind, touches: [[i, 0, at[i]]] },
    ];
  });
}

/**
 * Whether the border follows the cut: beside its middle the kinds are those of the two sides. Three kinds meet in a
 * point that is worth finding.
 */
function isStraight([tip, side, rest]: readonly CutPiece[], longest: number, d: Division): boolean {
  if (side.kind !== rest.kind) return false;
  const [p, a, b] = tip.corners;
  if (areaOf(p, a, b) <= negligible * longest ** 2) return true;
  const middle = between(a, b, 0.5);
  const far = between(side.corners[1], side.corners[2], 0.5);
  const near = towards(middle, p, probe * longest);
  const beyond = towards(middle, far, probe * longest);
  return d.kind(near.x, near.y, near.z) === tip.kind && d.kind(beyond.x, beyond.y, beyond.z) === side.kind;
}

function towards(p: Corner, q: Corner, length: number): Corner {
  return between(p, q, Math.min(0.5, length / (distance(p, q) || 1)));
}

function layCut(cut: readonly CutPiece[], d: Division): Borders {
  const borders: [number[], number[], number[]] = [[], [], []];
  let before = -1;
  for (let i = 0; i < cut.length; i++) {
    const { corners, kind, touches } = cut[i];
    const m = middleOf(...corners);
    d.middle(m.x, m.y, m.z);
    const piece = lay(...corners, kind, d);
    // Two triangles of one kind, one after the other, are a quadrangle.
    if (piece >= 0 && before >= 0 && cut[i - 1].kind === kind) d.pieces.join(before, piece);
    before = piece;
    if (piece < 0) continue;
    for (const [edge, from, to] of touches) borders[edge].push(from, to, piece);
  }
  return [inOrder(borders[0]), inOrder(borders[1]), inOrder(borders[2])];
}

/** At most two stretches, by where they begin. */
function inOrder(border: number[]): Border {
  if (border.length < 6 || border[0] <= border[3]) return border;
  return [...border.slice(3), ...border.slice(0, 3)];
}

/** Where on the way from p to q, 0 to 1, the kind stops being that of p. */
function change(p: Corner, q: Corner, { kind }: Division): number {
  let low = 0;
  let high = 1;
  for (let n = 0; n < halvings; n++) {
    const s = (low + high) / 2;
    if (kind(p.x + (q.x - p.x) * s, p.y + (q.y - p.y) * s, p.z + (q.z - p.z) * s) === p.kind) low = s;
    else high = s;
  }
  return (low + high) / 2;
}

function between(p: Corner, q: Corner, s: number): Corner {
  return { x: p.x + (q.x - p.x) * s, y: p.y + (q.y - p.y) * s, z: p.z + (q.z - p.z) * s, kind: 0 };
}

function middleOf(p: Corner, q: Corner, r: Corner): Corner {
  return { x: (p.x + q.x + r.x) / 3, y: (p.y + q.y + r.y) / 3, z: (p.z + q.z + r.z) / 3, kind: 0 };
}

/** Number of the piece, -1 when its kind is not gathered. */
function lay(p: Corner, q: Corner, r: Corner, kind: number, d: Division): number {
  const { pieces } = d;
  const n = kind < d.gatherFrom ? -1 : pieces.add(kind);
  if (n >= 0) {
    const { corners } = pieces;
    write(corners, n * 9, p);
    write(corners, n * 9 + 3, q);
    write(corners, n * 9 + 6, r);
  }
  const x = (p.x + q.x + r.x) / 3;
  d.take(kind, areaOf(p, q, r), x, (p.y + q.y + r.y) / 3, (p.z + q.z + r.z) / 3);
  return n;
}

function areaOf(p: Corner, q: Corner, r: Corner): number {
  const ux = q.x - p.x;
  const uy = q.y - p.y;
  const uz = q.z - p.z;
  const vx = r.x - p.x;
  const vy = r.y - p.y;
  const vz = r.z - p.z;
  return Math.sqrt((uy * vz - uz * vy) ** 2 + (uz * vx - ux * vz) ** 2 + (ux * vy - uy * vx) ** 2) / 2;
}
