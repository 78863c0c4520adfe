import type { Finding } from '@coveline/review';
import { m } from '../../../messages/index.ts';
import { showWhole } from '../../../numbers/show.ts';
import { Link } from '../../../routing/link.tsx';
import { kindOf } from '../../../signs/kind.ts';
import { KindSign } from '../../../signs/kind-sign.tsx';
import { useMachineData } from '../../machine/machine-context.ts';
import { stack } from './stack.ts';

interface Props {
  readonly findings: readonly Finding[];
  readonly y: (height_mm: number) => number;
}

/**
 * The findings at their height, gravest first where several want the same spot; the rest of a spot is counted, and
 * the count leads to the next of them.
 */
export function ElevationMarks({ findings, y }: Props) {
  const { route, decisions } = useMachineData();
  const spots = stack(
    findings.map((f) => y(f.height_mm)),
    findings.findIndex((f) => f.id === route.item),
  );
  return (
    <ul className="elevation-marks" aria-label={m.walk.title}>
      {spots.map(({ top, shown, more }) => (
        <li key={top} style={{ top }}>
          {shown.map((index) => {
            const f = findings[index];
            return (
              <Link
                key={f.id}
                to={{ ...route, page: 'walk', item: f.id }}
                className={`elevation-mark${f.id in decisions ? ' mark-decided' : ''}`}
                aria-current={f.id === route.item ? 'true' : undefined}
                aria-label={`${f.title}, ${showWhole(f.height_mm)}`}
                title={f.title}
                tabIndex={-1}
              >
                <KindSign kind={kindOf(f)} size={16} />
              </Link>
            );
          })}
          {more.length > 0 ? (
            <Link
              to={{ ...route, page: 'walk', item: findings[more[0]].id }}
              className="elevation-mark elevation-more"
              aria-label={m.elevation.more(more.length)}
              title={m.elevation.more(more.length)}
              tabIndex={-1}
            >
              +{more.length}
            </Link>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
