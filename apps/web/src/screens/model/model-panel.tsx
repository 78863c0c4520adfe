import { useEffect } from 'react';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { Notes } from '../../shell/notes.tsx';
import { setView, useViewState } from '../../stage/view-state.ts';
import { useViewer } from '../../stage/viewer-context.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { OpenModel } from '../start/open-model.tsx';
import { HealthSection } from './health-section.tsx';
import { PartEditor } from './part-editor.tsx';
import { PartsTable } from './parts-table.tsx';
import { usePickedPart } from './use-picked-part.ts';
import './model.css';

/** The parts of the machine and what is known of each. */
export function ModelPanel() {
  const { route, model, machine, revision, parts, survey } = useMachineData();
  const { chosen } = useViewState();
  const viewer = useViewer();
  usePickedPart();

  // A part named by the address is chosen and brought into the picture.
  useEffect(() => {
    if (route.item === null || !model?.parts.some((p) => p.id === route.item)) return;
    setView({ chosen: [route.item] });
    viewer?.fit([route.item]);
  }, [route.item, model, viewer]);

  if (!revision)
    return (
      <div className="panel">
        <div className="panel-head">
          <h1>{m.parts.title}</h1>
        </div>
        <OpenModel machine={machine} />
      </div>
    );
  return (
    <div className="panel">
      <div className="panel-head panel-head-row">
        <h1>{m.parts.title}</h1>
        <Link to={{ ...route, page: 'site', item: null }}>{m.site.title}</Link>
        <OpenModel machine={machine} />
      </div>
      {survey?.health ? <HealthSection health={survey.health} /> : null}
      <Notes title={m.parts.notes} notes={[...new Set(revision.notes.map((n) => n.text))]} />
      {parts.length > 0 ? (
        <>
          <PartsTable />
          <PartEditor chosen={chosen} />
        </>
      ) : (
        <p className="empty">{m.parts.notRead}</p>
      )}
    </div>
  );
}
