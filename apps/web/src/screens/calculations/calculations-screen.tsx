import { findCalculation } from '@coveline/engineering';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { CalculationList } from './calculation-list.tsx';
import { CalculationPage } from './calculation-page.tsx';
import './calculations.css';

/** All calculations, or one of them. */
export function CalculationsScreen({ name }: { readonly name: string | null }) {
  return (
    <>
      <header className="calc-top">
        <Link to={{ at: 'start' }}>{m.product}</Link>
        {name === null ? null : <Link to={{ at: 'calculations', name: null }}>{m.calculations.all}</Link>}
      </header>
      <main id="main" className="page page-wide calc" tabIndex={-1}>
        {name === null ? <CalculationList /> : <One name={name} />}
      </main>
    </>
  );
}

function One({ name }: { readonly name: string }) {
  const entry = findCalculation(name);
  return entry === undefined ? (
    <h1>{m.calculations.noSuch(name)}</h1>
  ) : (
    <CalculationPage key={name} entry={entry} />
  );
}
