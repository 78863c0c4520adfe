/** Sizes that look like a file in another unit, or parts that came from one. */
import { type Model, placedPositions } from '@coveline/model';

export interface OddSize {
  readonly parts: readonly string[];
  readonly text: string;
}

/** Food machines and their parts lie between these, mm. Common practice. */
const [smallest, largest] = [2, 50_000];
/** A part so many times as large as the second largest is from another unit: 25.4 between inch and millimetre. */
const outsized = 20;

export function oddSizes(model: Model): readonly OddSize[] {
  const sizes = model.parts.map((_, p) => diagonal(placedPositions(model, p)));
  const out: OddSize[] = [];
  const whole = Math.max(0, ...sizes);
  if (whole > 0 && (whole < smallest || whole > largest)) {
    const size = whole < smallest ? `${whole.toPrecision(2)} mm` : `${(whole / 1000).toFixed(0)} m`;
    out.push({
      parts: model.parts.filter((_, p) => sizes[p] === whole).map((p) => p.id),
      text: `The largest part is ${size} across: the unit of the file may be another one. It is taken as it stands.`,
    });
  }
  const sorted = [...sizes].sort((a, b) => b - a);
  if (sorted.length >= 3 && sorted[1] > 0 && sorted[0] > outsized * sorted[1]) {
    const id = model.parts[sizes.indexOf(sorted[0])].id;
    out.push({
      parts: [id],
      text: `"${id}" is ${(sorted[0] / sorted[1]).toFixed(0)} times as large as every other part: it may have been drawn in another unit. It is taken as it stands.`,
    });
  }
  return out;
}

function diagonal(positions: Float64Array): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const axis = i % 3;
    if (positions[i] < low[axis]) low[axis] = positions[i];
    if (positions[i] > high[axis]) high[axis] = positions[i];
  }
  return positions.length === 0 ? 0 : Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}
