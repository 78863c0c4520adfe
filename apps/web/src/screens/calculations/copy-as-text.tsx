import { type Outcome, resultText } from '@coveline/engineering';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';

interface Props {
  readonly outcome: Extract<Outcome, { kind: 'done' }>;
  readonly understood: readonly string[];
}

/** Puts the result with its working on the clipboard, in the words of the command line. */
export function CopyAsText({ outcome, understood }: Props) {
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(resultText(outcome, understood));
      setSaid(m.calculations.copied);
    } catch {
      // Refused by the person or the browser, or the page does not come from a safe place: either way no clipboard.
      setSaid(m.calculations.notCopied);
    }
  };
  return (
    <p className="calc-copy">
      <Button className="outlined" onPress={copy}>
        {m.calculations.copy}
      </Button>
      <span role="status" className="soft">
        {said}
      </span>
    </p>
  );
}
