import { bounds } from '@coveline/model';
import { useCallback } from 'react';
import { go } from '../routing/use-route.ts';
import { useMachineData } from '../screens/machine/machine-context.ts';
import { currentFilter } from '../screens/walk/filter.ts';
import { shownFindings } from '../screens/walk/shown-findings.ts';
import {
  ghostParts,
  hideParts,
  isolateParts,
  setView,
  showAllParts,
  viewState,
} from '../stage/view-state.ts';
import { useViewer } from '../stage/viewer-context.ts';
import type { Action } from './keys.ts';
import { openDialog } from './open-dialog.ts';

/** Does what a key or the palette asks for. */
export function useAct(): (action: Action) => void {
  const data = useMachineData();
  const viewer = useViewer();
  return useCallback(
    (action) => {
      const view = viewState();
      const { route, model } = data;
      const step = (by: number) => {
        const shown = shownFindings(data, currentFilter());
        if (shown.length === 0) return;
        const now = shown.findIndex((f) => f.id === route.item);
        const next = now < 0 ? (by > 0 ? 0 : shown.length - 1) : (now + by + shown.length) % shown.length;
        go({ ...route, page: 'walk', item: shown[next].id });
      };
      switch (action.do) {
        case 'fit':
          return viewer?.fit(view.chosen);
        case 'view':
          return viewer?.view(action.view);
        case 'parallel':
          return setView({ projection: view.projection === 'parallel' ? 'perspective' : 'parallel' });
        case 'section': {
          if (view.section || !model) return setView({ section: null });
          const [low, high] = bounds(model);
          return setView({
            section: { axis: 'y', at_mm: Math.round((low[1] + high[1]) / 2), flipped: true },
          });
        }
        case 'measure':
          return setView({ measuring: !view.measuring });
        case 'hide':
          return hideParts(view.chosen);
        case 'isolate':
          if (model && view.chosen.length > 0)
            isolateParts(
              view.chosen,
              model.parts.map((p) => p.id),
            );
          return;
        case 'ghost':
          return ghostParts(view.chosen);
        case 'showAll':
          return showAllParts();
        case 'next':
          return step(1);
        case 'previous':
          return step(-1);
        case 'list':
          return go({ ...route, page: 'walk', item: null });
        case 'help':
          return openDialog('help');
      }
    },
    [data, viewer],
  );
}
