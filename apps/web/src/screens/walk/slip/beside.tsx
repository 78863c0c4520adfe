import type { Finding } from '@coveline/review';
import { m } from '../../../messages/index.ts';
import { Link } from '../../../routing/link.tsx';
import { useMachineData } from '../../machine/machine-context.ts';

/** The places and parts that a finding is about, each a way into the model. */
export function Beside({ finding }: { readonly finding: Finding }) {
  const { model, route } = useMachineData();
  const name = (id: string) => model?.parts.find((p) => p.id === id)?.name ?? id;
  return (
    <>
      <h2>{m.slip.beside}</h2>
      <p>
        {m.slip.places(finding.places.length)}
        {finding.parts.length === 0 ? ` · ${m.slip.noParts}` : ''}
        {finding.parts.map((id) => (
          <span key={id}>
            {' · '}
            <Link to={{ ...route, page: 'model', item: id }}>{name(id)}</Link>
          </span>
        ))}
      </p>
    </>
  );
}
