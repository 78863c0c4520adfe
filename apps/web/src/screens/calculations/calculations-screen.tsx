import { findCalculation } from '@coveline/engineering';
import { m } from '../../messages/index.ts';
import { locale } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import type { KeptAt } from '../../routing/route.ts';
import { useMachine } from '../../state/queries.ts';
import { CalculationList } from './calculation-list.tsx';
import { CalculationPage } from './calculation-page.tsx';
import './calculations.css';

interface Props {
  readonly name: string | null;
  readonly kept: KeptAt | null;
}

/** All calculations, or one of them. */
export function CalculationsScreen({ name, kept }: Props) {
  return (
    <>
      <header className="calc-top">
        <Link to={{ at: 'start' }}>{m.product}</Link>
        {name === null ? null : (
          <Link to={{ at: 'calculations', name: null, kept: null }}>{m.calculations.all}</Link>
        )}
      </header>
      <main id="main" className="page page-wide calc" tabIndex={-1}>
        {name === null ? <CalculationList /> : <One name={name} kept={kept} />}
      </main>
    </>
  );
}

function One({ name, kept }: { readonly name: string; readonly kept: KeptAt | null }) {
  const entry = findCalculation(name);
  if (entry === undefined) return <h1>{m.calculations.noSuch(name)}</h1>;
  if (kept) return <KeptOne key={`${kept.machine} ${kept.id}`} entry={entry} at={kept} />;
  return <CalculationPage key={name} entry={entry} locale={locale} kept={null} />;
}

/** Its numbers stay in the language in which they were typed. */
function KeptOne({
  entry,
  at,
}: {
  readonly entry: NonNullable<ReturnType<typeof findCalculation>>;
  readonly at: KeptAt;
}) {
  const { data: machine, error } = useMachine(at.machine);
  if (error) return <p role="alert">{error.message}</p>;
  if (!machine) return null;
  const calculation = machine.project.calculations.find((one) => one.id === at.id);
  if (!calculation) return <h1>{m.keep.gone(machine.name)}</h1>;
  return <CalculationPage entry={entry} locale={calculation.locale} kept={{ machine, calculation }} />;
}
