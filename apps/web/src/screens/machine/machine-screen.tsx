import type { Viewer } from '@coveline/viewer';
import { useEffect, useState } from 'react';
import { m } from '../../messages/index.ts';
import type { MachineRoute } from '../../routing/route.ts';
import { Shortcuts } from '../../shell/shortcuts.tsx';
import { TopBar } from '../../shell/top-bar.tsx';
import { Trouble } from '../../shell/trouble.tsx';
import { Stage } from '../../stage/stage.tsx';
import { useModelInView, usePartColors, usePlacesInView } from '../../stage/use-model-in-view.ts';
import { resetView } from '../../stage/view-state.ts';
import { ViewTools } from '../../stage/view-tools.tsx';
import { ViewerContext } from '../../stage/viewer-context.ts';
import { useMachine } from '../../state/queries.ts';
import { Elevation } from '../walk/elevation/elevation.tsx';
import { useFindingsInView } from '../walk/use-findings-in-view.ts';
import { JobStrip } from './job-strip.tsx';
import { MachineContext, type MachineData } from './machine-context.ts';
import { PageOf } from './page-of.tsx';
import { PathBar } from './path-bar.tsx';
import { useMachineDataFor } from './use-machine-data.ts';
import './machine.css';

/** Everything about one machine. */
export function MachineScreen({ route }: { readonly route: MachineRoute }) {
  const { data: machine, error } = useMachine(route.machine);
  if (error) return <Trouble error={error} toStart />;
  if (!machine) return null;
  return <Loaded key={machine.id} route={route} machine={machine} />;
}

function Loaded({
  route,
  machine,
}: {
  readonly route: MachineRoute;
  readonly machine: MachineData['machine'];
}) {
  const data = useMachineDataFor(machine, route);
  const [viewer, setViewer] = useState<Viewer | null>(null);
  const beside = route.page === 'walk' || route.page === 'model';
  useEffect(() => {
    document.title = `${machine.name} · ${m.product}`;
  }, [machine.name]);
  useEffect(() => resetView, []);

  if (route.revision !== null && data.revision === null)
    return <Trouble error={new Error(m.problem.noSuchRevision)} toStart />;
  return (
    <MachineContext value={data}>
      <ViewerContext value={viewer}>
        <InView data={data} viewer={viewer} />
        <div className={`machine machine-${beside ? route.page : 'page'}`}>
          <TopBar />
          <JobStrip />
          <div className="machine-elevation" hidden={!beside}>
            <Elevation />
          </div>
          <section className="machine-stage" hidden={!beside} aria-label={m.view.label}>
            <Stage onViewer={setViewer} />
            <ViewTools />
            {data.revision?.parts != null && !data.model ? (
              <p className="stage-note">{m.view.loading}</p>
            ) : null}
          </section>
          <main id="main" className="machine-main" tabIndex={beside ? -1 : 0}>
            <PageOf page={route.page} />
          </main>
          <PathBar />
        </div>
        <Shortcuts />
      </ViewerContext>
    </MachineContext>
  );
}

/** Keeps the picture in step with the data. */
function InView({ data, viewer }: { readonly data: MachineData; readonly viewer: Viewer | null }) {
  useModelInView(viewer, data.model);
  usePlacesInView(viewer, data.model, data.survey, data.drawings);
  usePartColors(viewer, data.model, data.parts);
  useFindingsInView(viewer, data);
  return null;
}
