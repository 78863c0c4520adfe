import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { kindOf, kinds } from '../../signs/kind.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { type Filter, setFilter, useFindingFilter } from './filter.ts';

export function FindingFilters() {
  const filter = useFindingFilter();
  const { findings } = useMachineData();
  const present = kinds.filter((kind) => findings.some((f) => kindOf(f) === kind));
  return (
    <div className="filters">
      <Choice
        label={m.walk.filterKind}
        value={filter.kind}
        options={[['all', m.walk.anyKind], ...present.map((k) => [k, m.kinds[k]] as const)]}
        onChange={(kind) => setFilter({ kind: kind as Filter['kind'] })}
      />
      <Choice
        label={m.walk.filterArea}
        value={filter.area}
        options={[['all', m.walk.anyArea], ...Object.entries(m.areas)]}
        onChange={(area) => setFilter({ area: area as Filter['area'] })}
      />
      <Choice
        label={m.walk.filterState}
        value={filter.state}
        options={Object.entries(m.walk.states)}
        onChange={(state) => setFilter({ state: state as Filter['state'] })}
      />
    </div>
  );
}
