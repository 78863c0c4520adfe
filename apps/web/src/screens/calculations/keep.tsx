import { againstBefore, type CalculationEntry, type TypedRun } from '@coveline/engineering';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { useChange, useChangeFailure } from '../../state/changes.ts';
import type { Given } from './given.ts';
import { KeepDialog } from './keep-dialog.tsx';
import type { KeptHere } from './kept-here.ts';
import { textsByKey } from './link.ts';
import { typedTexts } from './typed-texts.ts';

interface Props {
  readonly entry: CalculationEntry;
  readonly given: Given;
  readonly locale: string;
  readonly run: TypedRun | null;
  readonly kept: KeptHere | null;
}

/** Keeps what is typed with a machine, anew or in the place of what it was opened from. */
export function Keep({ entry, given, locale, run, kept }: Props) {
  const [open, setOpen] = useState(false);
  const [keptWith, setKeptWith] = useState<KeptHere['machine'] | null>(null);
  return (
    <section className="calc-keep" aria-label={m.keep.label}>
      {kept ? <KeepValues entry={entry} given={given} locale={locale} run={run} kept={kept} /> : null}
      <p className="calc-copy">
        <Button className="outlined" onPress={() => setOpen(true)}>
          {kept ? m.keep.asAnother : m.keep.withMachine}
        </Button>
        <span role="status">
          {keptWith ? (
            <>
              {m.keep.kept} <ToMachine machine={keptWith} />
            </>
          ) : null}
        </span>
      </p>
      {open ? (
        <KeepDialog
          entry={entry}
          given={given}
          locale={locale}
          run={run}
          onKept={(machine) => {
            setKeptWith(machine);
            setOpen(false);
          }}
          onClose={() => setOpen(false)}
        />
      ) : null}
    </section>
  );
}

/** What a calculation that is kept already was opened from, and the way to put what is typed now in its place. */
function KeepValues({ entry, given, locale, run, kept }: Props & { readonly kept: KeptHere }) {
  const change = useChange(kept.machine.id);
  const failure = useChangeFailure();
  const [problem, setProblem] = useState<string | null>(null);
  const { calculation } = kept;
  const same = isSame(given, textsByKey(calculation.inputs, entry));
  const save = async () => {
    if (run === null) return;
    try {
      const inputs = await typedTexts(given, entry);
      const { id, ...rest } = calculation;
      const { gives } = againstBefore(entry, run, undefined);
      setProblem(null);
      change.mutate({
        do: 'setCalculation',
        calculation: id,
        kept: { ...rest, inputs, locale, gave: gives },
      });
    } catch (error) {
      setProblem((error as Error).message);
    }
  };
  return (
    <>
      <p>
        {m.keep.openedFrom(calculation.title)} <ToMachine machine={kept.machine} />
      </p>
      <p className="calc-copy">
        <Button className="main" isDisabled={same || run === null || change.isPending} onPress={save}>
          {m.keep.values}
        </Button>
        <span role="status" className="soft">
          {same ? m.keep.valuesKept : ''}
        </span>
      </p>
      {(problem ?? failure) ? (
        <p className="missing" role="alert">
          {problem ?? failure}
        </p>
      ) : null}
    </>
  );
}

const isSame = (given: Given, texts: Readonly<Record<string, string>>): boolean =>
  Object.keys(given).length === Object.keys(texts).length &&
  Object.entries(given).every(([key, value]) => texts[key] === value);

function ToMachine({ machine }: { readonly machine: KeptHere['machine'] }) {
  return (
    <Link to={{ at: 'machine', machine: machine.id, revision: null, page: 'calculations', item: null }}>
      {machine.name}
    </Link>
  );
}
