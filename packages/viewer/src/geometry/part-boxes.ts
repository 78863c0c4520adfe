import { type Model, placedPositions } from '@coveline/model';

/** Per part: lowest xyz and highest xyz, model frame, mm. */
export function partBoxes(model: Model): Float64Array {
  const out = new Float64Array(model.parts.length * 6);
  model.parts.forEach((_, index) => {
    out.fill(Infinity, index * 6, index * 6 + 3);
    out.fill(-Infinity, index * 6 + 3, index * 6 + 6);
    const xyz = placedPositions(model, index);
    for (let i = 0; i < xyz.length; i++) {
      const low = index * 6 + (i % 3);
      if (xyz[i] < out[low]) out[low] = xyz[i];
      if (xyz[i] > out[low + 3]) out[low + 3] = xyz[i];
    }
  });
  return out;
}
