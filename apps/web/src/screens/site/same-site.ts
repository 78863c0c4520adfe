import type { Site } from '@coveline/survey';

/** Whether two sites say the same; the order of keys in them does not count. */
export function sameSite(a: Site, b: Site): boolean {
  return sorted(a) === sorted(b);
}

const sorted = (value: unknown): string =>
  JSON.stringify(value, (_key, leaf: unknown) =>
    typeof leaf === 'object' && leaf !== null && !Array.isArray(leaf)
      ? Object.fromEntries(Object.entries(leaf).sort(([x], [y]) => (x < y ? -1 : 1)))
      : leaf,
  );
