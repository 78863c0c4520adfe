/** Which machine elements a model has, as far as names tell. */
import type { Known } from './known.ts';

export function presentElements({ is }: Known): ReadonlySet<string> {
  const out = new Set<string>();
  for (const hit of is) if (hit) out.add(hit.element);
  if (out.has('pipe') || out.has('pump') || out.has('valve')) out.add('gasket');
  return out;
}

/** Indices into the parts of the model, by element. */
export function partsByElement({ is }: Known): ReadonlyMap<string, readonly number[]> {
  const out = new Map<string, number[]>();
  is.forEach((hit, p) => {
    if (hit) out.set(hit.element, [...(out.get(hit.element) ?? []), p]);
  });
  return out;
}
