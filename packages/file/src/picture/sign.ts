/** Marks that tell the kind of a place by their shape: lens, double bar, angle, ring, hexagon, arc, chevrons. */
import { blend, type Image } from './image.ts';
import { type Rgb, type Sign, toneOf, tones } from './palette.ts';

type Point = readonly [number, number];

interface Drawn {
  readonly lines: readonly (readonly Point[])[];
  readonly filled: boolean;
}

const arc = (rx: number, ry: number, from: number, to: number): Point[] =>
  Array.from({ length: 33 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / 32) * Math.PI) / 180;
    return [rx * Math.cos(angle), ry * Math.sin(angle)] as const;
  });

const hexagon: readonly Point[] = Array.from({ length: 7 }, (_, i) => {
  const angle = ((30 + 60 * i) * Math.PI) / 180;
  return [7.5 * Math.cos(angle), 7.5 * Math.sin(angle)] as const;
});

/** Outlines about the middle, y down, in a box of 20 by 20. */
const shapes: Readonly<Record<Sign, Drawn>> = {
  liquid: { lines: [arc(8, 4.2, 0, 360)], filled: true },
  flat: { lines: [arc(7.5, 3.6, 0, 360)], filled: false },
  gap: {
    lines: [
      [
        [-3, -6.5],
        [-3, 6.5],
      ],
      [
        [3, -6.5],
        [3, 6.5],
      ],
    ],
    filled: false,
  },
  corner: {
    lines: [
      [
        [-5, -6],
        [-5, 6],
        [7, 6],
      ],
    ],
    filled: false,
  },
  hollow: { lines: [arc(6.5, 6.5, 0, 360)], filled: false },
  fastener: { lines: [hexagon], filled: false },
  reach: { lines: [arc(7.5, 7.5, 180, 360).map(([x, y]) => [x, y + 5] as const)], filled: false },
  air: {
    lines: [-5.5, 0.5].map((y) => [
      [-6, y],
      [0, y + 5],
      [6, y],
    ]),
    filled: false,
  },
  asked: {
    lines: [
      [
        [-5, -6.5],
        [5, -6.5],
        [5, 6.5],
        [-5, 6.5],
        [-5, -6.5],
      ],
      [
        [-2, -2],
        [2, -2],
      ],
      [
        [-2, 2],
        [2, 2],
      ],
    ],
    filled: false,
  },
};

/** A badge with the sign beside the place at (x, y), and a thin line that leads to it. Sizes in pixels. */
export function drawBadge(image: Image, sign: Sign, x: number, y: number, radius = 13): void {
  const away = radius * 2.6;
  const bx = clamp(x + (x > image.width * 0.7 ? -away : away), radius + 2, image.width - radius - 2);
  const by = clamp(y + (y < image.height * 0.3 ? away : -away), radius + 2, image.height - radius - 2);
  const tone = toneOf[sign];
  const badge = [bx, by, radius + 2] as const;
  const leader = [(x + bx) / 2, (y + by) / 2, Math.hypot(x - bx, y - by) / 2 + 3] as const;
  const dot = [x, y, 6] as const;
  const scale = radius / 12.5;
  const { lines, filled } = shapes[sign];
  const placed = lines.map((line) => line.map(([u, v]) => [bx + u * scale, by + v * scale] as const));
  paint(image, tones.paper, leader, (px, py) => 2.6 - toSegment(px, py, [x, y], [bx, by]));
  paint(image, tones.ink, leader, (px, py) => 1.1 - toSegment(px, py, [x, y], [bx, by]));
  paint(image, tones.paper, dot, (px, py) => 4.6 - Math.hypot(px - x, py - y));
  paint(image, tone, dot, (px, py) => 3.4 - Math.hypot(px - x, py - y));
  paint(image, tones.ink, badge, (px, py) => radius + 1 - Math.hypot(px - bx, py - by));
  paint(image, tones.paper, badge, (px, py) => radius - 0.2 - Math.hypot(px - bx, py - by));
  paint(image, tone, badge, (px, py) => {
    const gap = Math.min(...placed.map((line) => toLine(px, py, line)));
    return filled && inside(px, py, placed[0]) ? 1 : 1.1 * scale + 0.5 - gap;
  });
}

/** A dot with a rim, for overviews. */
export function drawDot(image: Image, sign: Sign, x: number, y: number, radius: number): void {
  const spot = [x, y, radius + 3] as const;
  paint(image, tones.paper, spot, (px, py) => radius + 2 - Math.hypot(px - x, py - y));
  paint(image, toneOf[sign], spot, (px, py) => radius + 0.5 - Math.hypot(px - x, py - y));
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}

/** Lays a tone wherever `cover` is positive, fully from 1 on, within `reach` pixels of (cx, cy). */
function paint(
  image: Image,
  tone: Rgb,
  [cx, cy, reach]: readonly [number, number, number],
  cover: (x: number, y: number) => number,
): void {
  const toX = Math.min(image.width - 1, Math.ceil(cx + reach));
  const toY = Math.min(image.height - 1, Math.ceil(cy + reach));
  for (let y = Math.max(0, Math.floor(cy - reach)); y <= toY; y++) {
    for (let x = Math.max(0, Math.floor(cx - reach)); x <= toX; x++) {
      const share = cover(x + 0.5, y + 0.5);
      if (share > 0) blend(image, y * image.width + x, tone, Math.min(1, share));
    }
  }
}

function toLine(x: number, y: number, line: readonly Point[]): number {
  let least = Infinity;
  for (let i = 1; i < line.length; i++) least = Math.min(least, toSegment(x, y, line[i - 1], line[i]));
  return least;
}

function toSegment(x: number, y: number, a: Point, b: Point): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const length2 = dx * dx + dy * dy;
  const f = length2 > 0 ? clamp(((x - a[0]) * dx + (y - a[1]) * dy) / length2, 0, 1) : 0;
  return Math.hypot(x - a[0] - dx * f, y - a[1] - dy * f);
}

function inside(x: number, y: number, outline: readonly Point[]): boolean {
  let odd = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [a, b] = [outline[i], outline[j]];
    if (a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) odd = !odd;
  }
  return odd;
}
