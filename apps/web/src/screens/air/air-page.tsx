import type { Overhang, SkyView } from '@coveline/survey';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import { kindOf } from '../../signs/kind.ts';
import { useMachineData } from '../machine/machine-context.ts';
import './air.css';
import { MouthTable } from './mouth-table.tsx';

/** Calculations of the air and of what it carries, by their names. */
const calculations = [
  'room-balance',
  'iso-class-evaluation',
  'recovery-time',
  'clean-up-rate',
  'settle-plate-to-container',
  'filter-penetration',
  'hydrogen-peroxide-liquid',
  'sample-size-for-rate',
] as const;

/** First air, what interrupts it, and what hangs above open containers. */
export function AirPage() {
  const { survey, findings, route } = useMachineData();
  const words = m.air;
  const sky: readonly SkyView[] = survey?.measures.openSky?.places ?? [];
  const above: readonly Overhang[] = survey?.measures.overhead?.places ?? [];
  const mouths = [...new Set([...sky.map((s) => s.mouth), ...above.map((o) => o.mouth)])];
  const own = findings.filter((f) => kindOf(f) === 'air');
  return (
    <div className="page page-wide air">
      <h1>{words.title}</h1>
      <p className="soft">{words.intro}</p>
      <p className="missing">{words.caution}</p>
      {survey ? null : <p className="empty">{words.notSurveyed}</p>}
      {survey && mouths.length === 0 ? <p className="empty">{words.none}</p> : null}
      {mouths.length > 0 && sky.length === 0 ? <p className="empty">{words.noFilter}</p> : null}
      {mouths.length > 0 ? <MouthTable mouths={mouths} sky={sky} above={above} /> : null}
      <p>
        <Link to={{ ...route, page: 'site', item: null }}>{words.toSite}</Link>
      </p>
      <h2>{words.findings}</h2>
      {own.length === 0 ? <p className="empty">{words.noFindings}</p> : null}
      <ul className="plain">
        {own.map((f) => (
          <li key={f.id}>
            <Link to={{ ...route, page: 'walk', item: f.id }}>{f.title}</Link>{' '}
            <span className="soft">
              {f.consequence.weightLabel}: {show(f.consequence.weight, '1')}
            </span>
          </li>
        ))}
      </ul>
      <h2>{words.alsoCalculate}</h2>
      <ul className="plain">
        {calculations.map((name) => (
          <li key={name}>
            <Link to={{ at: 'calculations', name, kept: null }}>{words.calculations[name]}</Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
