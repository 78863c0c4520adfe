import { type Brief, brief as briefSchema } from '@coveline/project';
import { lazy, Suspense } from 'react';
import { m } from '../../messages/index.ts';
import { announce } from '../../state/announce.ts';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { CleaningSection } from './cleaning-section.tsx';
import { ProductsSection } from './products-section.tsx';
import { PurposeSection } from './purpose-section.tsx';
import { YardstickSection } from './yardstick-section.tsx';
import './brief.css';

/** Brings the rules of the review with it. */
const HazardsSection = lazy(() =>
  import('./hazards-section.tsx').then((file) => ({ default: file.HazardsSection })),
);

/** What each section of the brief is given: the brief as it stands, and how a change of it is kept. */
export interface SectionProps {
  readonly brief: Brief;
  readonly set: (change: Partial<Brief>) => void;
}

/** The intended use. Every field saves itself when it is left. */
export function BriefPage() {
  const { machine } = useMachineData();
  const change = useChange(machine.id);
  const { brief } = machine.project;
  const set = (part: Partial<Brief>) => {
    const next = briefSchema.safeParse({ ...brief, ...part });
    if (!next.success) return announce(next.error.issues.map((i) => i.message).join(' '));
    change.mutate({ do: 'setBrief', brief: next.data });
  };
  return (
    <div className="page brief">
      <h1>{m.brief.title}</h1>
      <p className="soft">{m.brief.intro}</p>
      <PurposeSection brief={brief} set={set} />
      <ProductsSection brief={brief} set={set} />
      <Suspense>
        <HazardsSection brief={brief} />
      </Suspense>
      <CleaningSection brief={brief} set={set} />
      <YardstickSection brief={brief} set={set} />
    </div>
  );
}
