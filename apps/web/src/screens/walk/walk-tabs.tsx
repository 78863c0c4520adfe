import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { useMachineData } from '../machine/machine-context.ts';

/** The two ways to read a review: by finding and by requirement. */
export function WalkTabs() {
  const { route } = useMachineData();
  return (
    <nav className="tabs" aria-label={m.stops.walk}>
      {(['walk', 'requirements'] as const).map((page) => (
        <Link
          key={page}
          to={{ ...route, page, item: null }}
          aria-current={route.page === page ? 'page' : undefined}
        >
          {page === 'walk' ? m.walk.tabs.findings : m.walk.tabs.requirements}
        </Link>
      ))}
    </nav>
  );
}
