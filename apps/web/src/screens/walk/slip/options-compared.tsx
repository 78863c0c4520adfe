import type { Effect, Finding, Option } from '@coveline/review';
import { Fragment, useId, useState } from 'react';
import { m } from '../../../messages/index.ts';
import { show } from '../../../numbers/show.ts';
import { useOptions } from '../../../state/queries.ts';
import { useMachineData } from '../../machine/machine-context.ts';
import { WorkingView } from './working-view.tsx';
import './options.css';

interface Props {
  readonly finding: Finding;
  readonly onChoose: (text: string) => void;
}

/** The options side by side with what each would change. They are worked out when somebody asks: a trial takes seconds. */
export function OptionsCompared({ finding, onChoose }: Props) {
  const { at } = useMachineData();
  const [asked, setAsked] = useState(false);
  const { data, error, isFetching } = useOptions(asked ? at : null, finding.id);
  const words = m.options;
  if (!asked)
    return (
      <button type="button" className="outlined" onClick={() => setAsked(true)}>
        {words.compare}
      </button>
    );
  if (error)
    return (
      <p role="alert" className="missing">
        {error.message}
      </p>
    );
  if (isFetching || !data) return <p role="status">{words.working}</p>;
  const told = data.options.filter((o) => o.effects.length > 0);
  if (told.length === 0) return <p className="soft">{words.nothing}</p>;
  return (
    <table className="sheet-table options">
      <caption>{words.title}</caption>
      <thead>
        <tr>
          <th scope="col">{words.what}</th>
          <th scope="col">{words.before}</th>
          <th scope="col">{words.after}</th>
        </tr>
      </thead>
      <tbody>
        {told.map((option) => (
          <OptionRows key={option.text} option={option} onChoose={onChoose} />
        ))}
      </tbody>
    </table>
  );
}

function OptionRows({ option, onChoose }: { readonly option: Option; readonly onChoose: Props['onChoose'] }) {
  const words = m.options;
  return (
    <>
      <tr className="option-head">
        <th scope="rowgroup" colSpan={3}>
          {option.text} <span className="soft">{words.cost(m.costs[option.cost])}</span>{' '}
          <button
            type="button"
            className="quiet"
            aria-label={words.chooseNamed(option.text)}
            onClick={() => onChoose(option.text)}
          >
            {words.choose}
          </button>
        </th>
      </tr>
      {option.effects.map((e) => (
        <EffectRow key={e.label} effect={e} />
      ))}
      {option.caveats.map((c) => (
        <tr key={c}>
          <td colSpan={3} className="soft">
            {c}
          </td>
        </tr>
      ))}
    </>
  );
}

function EffectRow({ effect }: { readonly effect: Effect }) {
  const [open, setOpen] = useState(false);
  const panel = useId();
  return (
    <Fragment>
      <tr>
        <td>{effect.label}</td>
        <td className="figure">{show(effect.before, effect.unit)}</td>
        <td className="figure">
          <button
            type="button"
            className="quiet"
            aria-expanded={open}
            aria-controls={panel}
            onClick={() => setOpen(!open)}
          >
            {show(effect.after, effect.unit)}
            <span className="unseen">, {m.slip.working}</span>
          </button>
        </td>
      </tr>
      {open ? (
        <tr id={panel}>
          <td colSpan={3} className="working">
            <WorkingView working={effect.working} />
          </td>
        </tr>
      ) : null}
    </Fragment>
  );
}
