import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { useMachineData } from '../machine/machine-context.ts';

/** The ways through a review: by finding, by what is to be looked at, by requirement. */
export function WalkTabs() {
  const { route } = useMachineData();
  return (
    <nav className="tabs" aria-label={m.stops.walk}>
      {(['walk', 'round', 'requirements', 'revisions'] as const).map((page) => (
        <Link
          key={page}
          to={{ ...route, page, item: null }}
          aria-current={route.page === page ? 'page' : undefined}
        >
          {m.walk.tabs[page]}
        </Link>
      ))}
    </nav>
  );
}
