import { type FormEvent, type ReactNode, useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../../messages/index.ts';

interface Props {
  readonly hint: string;
  readonly children: ReactNode;
  /** What is missing, one sentence each; empty when it can be kept. */
  readonly missing: readonly string[];
  /** Whether somebody has tried to keep it, so that what is missing is shown. */
  readonly tried: boolean;
  readonly onSubmit: () => void;
  readonly onCancel: () => void;
}

/** The frame that the forms of the three decisions share. */
export function DecisionForm({ hint, children, missing, tried, onSubmit, onCancel }: Props) {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    form.current?.querySelector<HTMLElement>('textarea, input')?.focus();
  }, []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onSubmit();
  };
  return (
    <form ref={form} className="decision-form" onSubmit={submit} noValidate>
      <p className="soft">{hint}</p>
      {children}
      {tried && missing.length > 0 ? (
        <ul className="missing" role="alert">
          {missing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
      <div className="dialog-end">
        <Button className="outlined" onPress={onCancel}>
          {m.decision.cancel}
        </Button>
        <Button type="submit" className="main">
          {m.decision.keep}
        </Button>
      </div>
    </form>
  );
}
