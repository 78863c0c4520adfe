import type { Remedy } from '@coveline/catalogue';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { m } from '../../../messages/index.ts';

interface Props {
  readonly remedies: readonly Remedy[];
  readonly chosen: string;
  readonly onChoose: (text: string) => void;
}

/** What could be done. The chosen option goes into the decision to change it. */
export function Remedies({ remedies, chosen, onChoose }: Props) {
  if (remedies.length === 0) return null;
  return (
    <RadioGroup className="remedies" value={chosen} onChange={onChoose}>
      <Label className="remedies-head">
        <span>{m.slip.remedies}</span>
        <span>{m.slip.cost}</span>
      </Label>
      {remedies.map((remedy) => (
        <Radio key={remedy.text} value={remedy.text} className="react-aria-Radio remedy">
          <span className="remedy-text">{remedy.text}</span>
          <span className="remedy-cost">{m.costs[remedy.cost]}</span>
        </Radio>
      ))}
    </RadioGroup>
  );
}
