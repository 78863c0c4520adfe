import { type Model, placedPositions } from '@coveline/model';
import type { PartData } from '@coveline/project';

export interface Band {
  readonly area: 'food' | 'splash';
  /** Model frame, mm. */
  readonly low: number;
  readonly high: number;
}

/** Heights at which there are parts of the food and of the splash area; overlapping stretches are joined. */
export function areaBands(model: Model, parts: readonly PartData[]): Band[] {
  const area = new Map(parts.map((p) => [p.partId, p.areaClass]));
  const stretches = { food: [] as [number, number][], splash: [] as [number, number][] };
  model.parts.forEach((part, index) => {
    const of = area.get(part.id);
    if (of !== 'food' && of !== 'splash') return;
    const xyz = placedPositions(model, index);
    let low = Infinity;
    let high = -Infinity;
    for (let i = 2; i < xyz.length; i += 3) {
      if (xyz[i] < low) low = xyz[i];
      if (xyz[i] > high) high = xyz[i];
    }
    stretches[of].push([low, high]);
  });
  return (['food', 'splash'] as const).flatMap((name) =>
    joined(stretches[name]).map(([low, high]) => ({ area: name, low, high })),
  );
}

function joined(stretches: readonly [number, number][]): [number, number][] {
  const out: [number, number][] = [];
  for (const [low, high] of [...stretches].sort((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && low <= last[1]) last[1] = Math.max(last[1], high);
    else out.push([low, high]);
  }
  return out;
}
