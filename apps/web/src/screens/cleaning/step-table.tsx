import { mediumById } from '@coveline/catalogue';
import type { CleaningStep, SurfaceGroup } from '@coveline/project';
import type { Breach } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';

interface Props {
  readonly group: SurfaceGroup;
  readonly breaches: readonly Breach[];
}

export const mediumName = (id: string): string => mediumById.get(id)?.name ?? id;
const number = (value: number | undefined, unit: string) => (value === undefined ? '' : show(value, unit));

/** The steps in order, as a cleaner reads them. */
export function StepTable({ group, breaches }: Props) {
  const words = m.cleaning;
  const { columns } = words;
  if (group.steps.length === 0) return <p className="empty">{words.noSteps}</p>;
  return (
    <table className="sheet-table steps">
      <caption className="unseen">{`${group.name}: ${words.steps}`}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.step}</th>
          <th scope="col">{columns.medium}</th>
          <th scope="col">{columns.action}</th>
          <th scope="col">{columns.strength}</th>
          <th scope="col">{columns.heat}</th>
          <th scope="col">{columns.time}</th>
        </tr>
      </thead>
      <tbody>
        {group.steps.map((step, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other identity; one may come twice.
          <StepRow key={at} step={step} at={at} broken={breaches.some((b) => b.step === at)} />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly step: CleaningStep;
  readonly at: number;
  readonly broken: boolean;
}

function StepRow({ step, at, broken }: RowProps) {
  const words = m.cleaning;
  return (
    <tr className={broken ? 'step-broken' : ''}>
      <th scope="row">
        {at + 1} {words.kinds[step.kind]}
        <div className="soft">{step.how}</div>
      </th>
      <td>{step.medium === 'none' ? words.actions.none : mediumName(step.medium)}</td>
      <td>{words.actions[step.action]}</td>
      <td className="figure">{number(step.concentration_pct, '%')}</td>
      <td className="figure">{number(step.temperature_degC, 'degC')}</td>
      <td className="figure">{number(step.time_min, 'min')}</td>
    </tr>
  );
}
