import { careLevel } from '@coveline/project';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import { Choice } from '../../shell/choice.tsx';
import { useProfiles } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import type { SectionProps } from './brief-page.tsx';

/** How strictly it is judged, and by which sources. */
export function YardstickSection({ brief, set }: SectionProps) {
  const { machine } = useMachineData();
  const profiles = useProfiles(machine.id).data ?? [];
  const known = profiles.some((p) => p.id === brief.profile);
  return (
    <section>
      <h2>{m.brief.judgement}</h2>
      <RadioGroup
        value={brief.careLevel}
        onChange={(level) => set({ careLevel: level as typeof brief.careLevel })}
      >
        <Label>{m.brief.care}</Label>
        {careLevel.options.map((level) => (
          <Radio key={level} value={level}>
            {m.brief.careLevels[level]}
          </Radio>
        ))}
      </RadioGroup>
      <div className="pair">
        <Choice
          label={m.brief.profile}
          value={brief.profile}
          options={[
            ...profiles.map((p) => [p.id, p.name] as const),
            ...(known ? [] : [[brief.profile, m.brief.profileGone(brief.profile)] as const]),
          ]}
          onChange={(profile) => set({ profile })}
        />
        <QuantityField
          label={m.brief.acceptedPool}
          value={brief.acceptedPool_mL}
          unit="mL"
          low={0}
          high={100_000}
          onChange={(v) => v !== null && set({ acceptedPool_mL: v })}
        />
      </div>
      <p className="soft">{m.brief.acceptedPoolHint(m.brief.acceptedPool)}</p>
      <p className="soft">{profiles.find((p) => p.id === brief.profile)?.summary}</p>
    </section>
  );
}
