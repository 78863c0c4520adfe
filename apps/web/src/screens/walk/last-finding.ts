let last: string | null = null;

/** Remembers which finding is left, so that the list can put the focus back on it. */
export function leaveFinding(id: string): void {
  last = id;
}

/** The finding that was left last, once. */
export function takeLastFinding(): string | null {
  const taken = last;
  last = null;
  return taken;
}
