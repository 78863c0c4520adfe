import type { KeptCalculation } from '@coveline/project';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { SavedWords } from '../brief/saved-words.tsx';
import { useMachineData } from '../machine/machine-context.ts';
import type { KeptChanged } from './kept-item.tsx';

interface Props {
  readonly kept: KeptCalculation;
  readonly onChange: (next: KeptChanged) => void;
}

const noFinding = 'none';

/** Its title, its note, and the finding that it belongs to. */
export function KeptChange({ kept, onChange }: Props) {
  const { findings, revision } = useMachineData();
  const { id: _, ...rest } = kept;
  const { about: __, ...withoutAbout } = rest;
  const here = kept.about?.revision === revision?.id ? kept.about?.finding : undefined;
  return (
    <div className="kept-change">
      <SavedWords
        label={m.keep.title}
        value={kept.title}
        onSave={(title) => title.trim() !== '' && onChange({ ...rest, title: title.trim().slice(0, 200) })}
      />
      <SavedWords
        label={m.keep.note}
        value={kept.note}
        lines={3}
        hint={m.keep.noteHint}
        onSave={(note) => onChange({ ...rest, note: note.slice(0, 4000) })}
      />
      {revision ? (
        <Choice
          label={m.keep.belongsTo}
          value={here ?? noFinding}
          options={[[noFinding, m.keep.noFinding], ...findings.map((f) => [f.id, f.title] as const)]}
          onChange={(finding) =>
            onChange(
              finding === noFinding ? withoutAbout : { ...rest, about: { revision: revision.id, finding } },
            )
          }
        />
      ) : null}
    </div>
  );
}
