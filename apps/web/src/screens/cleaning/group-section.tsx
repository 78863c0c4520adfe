import { type CleaningStep, cleaningWay, type SurfaceGroup, soil } from '@coveline/project';
import { type GroupReview, stepsFor } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { Breaches } from './breaches.tsx';
import { minutesOf } from './cleaning-page.tsx';
import { MaterialVerdicts } from './material-verdicts.tsx';
import { PartMover } from './part-mover.tsx';
import { StepEditor } from './step-editor.tsx';
import { StepTable } from './step-table.tsx';

interface Props {
  readonly review: GroupReview;
  readonly all: readonly GroupReview[];
}

/** One group of surfaces: way, soil, steps, what is wrong with them, and the parts. */
export function GroupSection({ review, all }: Props) {
  const { machine, revision } = useMachineData();
  const change = useChange(machine.id);
  const { group, proposed } = review;
  const words = m.cleaning;
  const keep = (set: Omit<SurfaceGroup, 'id'> | null) =>
    revision && change.mutate({ do: 'setGroup', revision: revision.id, group: group.id, set });
  const { id: _, ...rest } = group;
  const setSteps = (steps: CleaningStep[]) => keep({ ...rest, steps });
  return (
    <section className="group" aria-labelledby={`group-${group.id}`}>
      <header className="group-head">
        <h2 id={`group-${group.id}`}>{group.name}</h2>
        <span className="soft">
          {[words.parts(group.parts.length), minutesOf(review), proposed ? words.proposed : words.set].join(
            ' · ',
          )}
        </span>
        {proposed ? null : (
          <button
            type="button"
            className="quiet"
            aria-label={words.restoreNamed(group.name)}
            onClick={() => keep(null)}
          >
            {words.restore}
          </button>
        )}
      </header>
      <div className="group-choices">
        <Choice
          label={words.way}
          value={group.way}
          options={cleaningWay.options.map((w) => [w, m.brief.wayNames[w]] as const)}
          onChange={(value) => {
            const way = cleaningWay.parse(value);
            keep({ ...rest, way, steps: stepsFor(way, group.soil) });
          }}
        />
        <Choice
          label={words.soil}
          value={group.soil}
          options={soil.options.map((s) => [s, words.soils[s]] as const)}
          onChange={(value) => {
            const next = soil.parse(value);
            keep({ ...rest, soil: next, steps: stepsFor(group.way, next) });
          }}
        />
      </div>
      {group.reasons.length > 0 ? (
        <details>
          <summary>{words.why}</summary>
          <ul>
            {group.reasons.map((r) => (
              <li key={r}>{r}</li>
            ))}
          </ul>
        </details>
      ) : null}
      <StepTable group={group} breaches={review.breaches} />
      <Breaches breaches={review.breaches} />
      <StepEditor name={group.name} steps={group.steps} onChange={setSteps} />
      <MaterialVerdicts review={review} />
      <PartMover group={group} all={all.map((g) => g.group)} />
    </section>
  );
}
