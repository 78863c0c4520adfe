import { type Eye, look, met, newSight, open } from './look.ts';
import { perLine } from './sizes.ts';

/** Looks along a line stand this many of its edge lengths apart, and this many off it. */
const apart = 2;
const off = 0.3;
/** Lines between two looks at the signal. */
const linesAtOnce = 1024;

const sight = newSight();

/**
 * What of some lines (`perLine` numbers each, see `Facing`) has something to see beside it, with a stretch more at
 * either end: what faces a surface may lie behind something nearer, or in material. `candidate`: 1 for
 * triangles that something faces. `normals`: per triangle.
 */
export function seenStretches(
  eye: Eye,
  part: number,
  candidate: Uint8Array,
  lines: readonly number[],
  normals: Float64Array,
  step: () => void,
): number[] {
  const out: number[] = [];
  for (let i = 0; i < lines.length; i += perLine) {
    if ((i / perLine) % linesAtOnce === 0) step();
    if (candidate[lines[i + 10]] === 0) continue;
    const size = lines[i + 6];
    const along = [0, 1, 2].map((k) => lines[i + 3 + k] - lines[i + k]);
    const count = Math.max(1, Math.ceil(Math.hypot(along[0], along[1], along[2]) / (apart * size)));
    const inward = Math.hypot(lines[i + 7], lines[i + 8], lines[i + 9]);
    const lift = Math.min(off * size, 0.5 * inward) / inward;
    const triangle = lines[i + 10];
    const n = 3 * triangle;
    if (inward === 0) {
      if (touchesInLine(eye, part, lines, i, normals)) emit(out, lines, i, 0, 1);
      continue;
    }
    const sees = (stretch: number): boolean => {
      if (stretch < 0 || stretch >= count) return false;
      const at = (k: number) => lines[i + k] + ((stretch + 0.5) / count) * along[k] + lift * lines[i + 7 + k];
      look(eye, part, triangle, at(0), at(1), at(2), normals[n], normals[n + 1], normals[n + 2], sight);
      return sight.state !== open;
    };
    let before = false;
    let now = sees(0);
    let from = -1;
    for (let s = 0; s < count; s++) {
      const next = sees(s + 1);
      if (before || now || next) {
        if (from < 0) from = s;
      } else if (from >= 0) {
        emit(out, lines, i, from / count, s / count);
        from = -1;
      }
      before = now;
      now = next;
    }
    if (from >= 0) emit(out, lines, i, from / count, 1);
  }
  return out;
}

/** A contact this far to either side of a line makes it a face, mm. */
const besideLine_mm = 0.6;

/** Whether surfaces touch at a line, or close beside it, and no longer a little farther to either side. */
function touchesInLine(
  eye: Eye,
  part: number,
  lines: readonly number[],
  i: number,
  normals: Float64Array,
): boolean {
  const triangle = lines[i + 10];
  const [nx, ny, nz] = normals.subarray(3 * triangle, 3 * triangle + 3);
  const [ex, ey, ez] = [0, 1, 2].map((k) => lines[i + 3 + k] - lines[i + k]);
  const across = [ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex];
  const length = Math.hypot(across[0], across[1], across[2]);
  if (length === 0) return false;
  const touches = (share: number): boolean => {
    const d = (share * besideLine_mm) / length;
    const at = (k: number) => (lines[i + k] + lines[i + 3 + k]) / 2 + d * across[k];
    look(eye, part, triangle, at(0), at(1), at(2), nx, ny, nz, sight);
    return sight.state === met;
  };
  return (touches(0) || touches(0.5) || touches(-0.5)) && !touches(1) && !touches(-1);
}

/** A stretch of a line, between two shares of its length. */
function emit(out: number[], lines: readonly number[], i: number, from: number, to: number): void {
  for (const s of [from, to]) {
    for (let k = 0; k < 3; k++) out.push(lines[i + k] + s * (lines[i + 3 + k] - lines[i + k]));
  }
  for (let k = 6; k < perLine; k++) out.push(lines[i + k]);
}
