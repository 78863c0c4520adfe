import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { type Page, type Stop, stops } from '../../routing/route.ts';
import { kindOf } from '../../signs/kind.ts';
import { type MachineData, useMachineData } from './machine-context.ts';

const partOf: Partial<Record<Page, Stop>> = {
  requirements: 'walk',
  round: 'walk',
  revisions: 'walk',
  site: 'model',
};

/** How far a stop is done, 0 to 1. */
export function doneAt(stop: Stop, data: MachineData): number {
  const { brief } = data.machine.project;
  switch (stop) {
    case 'brief':
      return ((brief.purpose ? 1 : 0) + (brief.products.length > 0 ? 1 : 0)) / 2;
    case 'model':
      return data.revision?.surveyedAt ? 1 : data.revision?.parts != null ? 0.5 : 0;
    case 'walk':
      return data.findings.length === 0 ? (data.review ? 1 : 0) : data.decided / data.findings.length;
    case 'cleaning': {
      const groups = data.review?.cleaning.groups ?? [];
      const sound = groups.filter((g) => !g.proposed && g.breaches.length === 0);
      return groups.length === 0 ? 0 : sound.length / groups.length;
    }
    case 'air': {
      const own = data.findings.filter((f) => kindOf(f) === 'air');
      const decided = own.filter((f) => f.id in data.decisions);
      return own.length === 0 ? (data.review ? 1 : 0) : decided.length / own.length;
    }
    case 'proof': {
      const points = data.review?.proof.points ?? [];
      const results = Object.values((data.revision && data.machine.project.results[data.revision.id]) ?? {});
      const sampled = points.filter((p) => results.some((r) => r.point === p.id));
      return points.length === 0 ? 0 : sampled.length / points.length;
    }
    case 'file':
      return data.revision?.hasFile ? 1 : 0;
  }
}

export function PathBar() {
  const data = useMachineData();
  const { route } = data;
  const here = partOf[route.page] ?? route.page;
  return (
    <nav className="path" aria-label={m.path.label}>
      <ol>
        {stops.map((stop) => {
          const done = doneAt(stop, data);
          return (
            <li key={stop}>
              <Link
                to={{ ...route, page: stop, item: null }}
                aria-current={here === stop ? 'step' : undefined}
              >
                <Disc done={done} />
                {m.stops[stop]}
                <span className="unseen">{`, ${m.path.done(Math.round(done * 100))}`}</span>
              </Link>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

/** Fills from below as the stop is done. */
function Disc({ done }: { readonly done: number }) {
  const level = 12 * (1 - done);
  return (
    <svg className="disc" width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
      <clipPath id={`disc-${done}`}>
        <rect x="0" y={1 + level} width="14" height="14" />
      </clipPath>
      <circle cx="7" cy="7" r="6" fill="currentColor" clipPath={`url(#disc-${done})`} />
      <circle cx="7" cy="7" r="6" fill="none" stroke="currentColor" strokeWidth="1.5" />
    </svg>
  );
}
