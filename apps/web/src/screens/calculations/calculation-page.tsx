import type { CalculationEntry } from '@coveline/engineering';
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Answer } from './answer.tsx';
import { CopyAsText } from './copy-as-text.tsx';
import { exampleTexts } from './example-texts.ts';
import type { Given } from './given.ts';
import { InputsForm } from './inputs-form.tsx';
import { Keep } from './keep.tsx';
import type { KeptHere } from './kept-here.ts';
import { readLink, textsByKey, writeLink } from './link.ts';
import { Reasons } from './reasons.tsx';
import { capital, sentence } from './sentence.ts';
import { useRun } from './use-run.ts';

const addressPause_ms = 400;

interface Props {
  readonly entry: CalculationEntry;
  /** Of the numbers that are typed. */
  readonly locale: string;
  /** The one of a machine that is shown; null for one of its own. */
  readonly kept: KeptHere | null;
}

/** One calculation: what it needs, what comes out as it is typed, and why. */
export function CalculationPage({ entry, locale, kept }: Props) {
  const [given, setGiven] = useState<Given>(() => {
    const said = readLink(window.location.search, entry);
    return Object.keys(said).length > 0 ? said : textsByKey(kept?.calculation.inputs ?? {}, entry);
  });
  const { run, underWay, fault } = useRun(entry.name, given, locale);
  const title = useRef<HTMLHeadingElement>(null);
  const { query, leftOut } = writeLink(given, entry);
  useEffect(() => {
    document.title = `${entry.title} · ${m.product}`;
    title.current?.focus();
  }, [entry]);
  useEffect(() => {
    // Browsers refuse more than some hundred changes of the address in half a minute.
    const timer = setTimeout(
      () => window.history.replaceState(null, '', `${window.location.pathname}${query}`),
      addressPause_ms,
    );
    return () => clearTimeout(timer);
  }, [query]);

  const outcome = run?.outcome ?? null;
  const untouched = Object.keys(given).length === 0;
  const change = (key: string, value: string | File) =>
    setGiven(({ [key]: _, ...others }) => (value === '' ? others : { ...others, [key]: value }));
  return (
    <>
      <h1 ref={title} tabIndex={-1}>
        {entry.title}
      </h1>
      <div className="calc-sides">
        <form className="calc-form" aria-label={m.calculations.inputs} onSubmit={(e) => e.preventDefault()}>
          <InputsForm entry={entry} given={given} fields={run?.fields ?? {}} onChange={change} />
          <div className="calc-does">
            <Button className="outlined" onPress={() => setGiven(exampleTexts(entry, locale))}>
              {m.calculations.example}
            </Button>
            <Button className="quiet" isDisabled={untouched} onPress={() => setGiven({})}>
              {m.calculations.empty}
            </Button>
          </div>
          <p className="soft calc-small">{sentence(m.calculations.exampleFrom(entry.example.source))}</p>
          <p className="soft calc-small">
            {leftOut.length === 0
              ? m.calculations.link
              : m.calculations.notInLink(leftOut.map((key) => capital(entry.inputs[key].label)).join(', '))}
          </p>
        </form>
        <div className="calc-out">
          <Answer entry={entry} run={run} underWay={underWay} fault={fault} untouched={untouched} />
          {outcome?.kind === 'done' && run ? (
            <CopyAsText outcome={outcome} understood={run.understood} />
          ) : null}
          {untouched ? null : <Keep entry={entry} given={given} locale={locale} run={run} kept={kept} />}
          <Reasons entry={entry} outcome={outcome} />
        </div>
      </div>
    </>
  );
}
