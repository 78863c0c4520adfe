import type { Kind } from './kind.ts';
import { signs } from './paths.ts';

interface Props {
  readonly kind: Kind;
  readonly size?: number;
}

/** The sign of a kind. Silent: its name always stands beside it in words. */
export function KindSign({ kind, size = 18 }: Props) {
  const { d, filled } = signs[kind];
  return (
    <svg className={`sign sign-${kind}`} width={size} height={size} viewBox="0 0 20 20" aria-hidden="true">
      <path d={d} fill={filled ? 'currentColor' : 'none'} stroke="currentColor" strokeWidth={1.9} />
    </svg>
  );
}
