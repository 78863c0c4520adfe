import type { CalculationEntry } from '@coveline/engineering';
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { locale } from '../../numbers/show.ts';
import { Answer } from './answer.tsx';
import { CopyAsText } from './copy-as-text.tsx';
import { exampleTexts } from './example-texts.ts';
import type { Given } from './given.ts';
import { InputsForm } from './inputs-form.tsx';
import { readLink, writeLink } from './link.ts';
import { Reasons } from './reasons.tsx';
import { capital, sentence } from './sentence.ts';
import { useRun } from './use-run.ts';

const addressPause_ms = 400;

/** One calculation: what it needs, what comes out as it is typed, and why. */
export function CalculationPage({ entry }: { readonly entry: CalculationEntry }) {
  const [given, setGiven] = useState<Given>(() => readLink(window.location.search, entry));
  const { run, underWay, fault } = useRun(entry.name, given);
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
          <Reasons entry={entry} outcome={outcome} />
        </div>
      </div>
    </>
  );
}
