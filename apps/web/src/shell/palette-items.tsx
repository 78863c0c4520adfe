import type { ReactNode } from 'react';
import { m } from '../messages/index.ts';
import { type Page, stops } from '../routing/route.ts';
import { go } from '../routing/use-route.ts';
import { useMachineData } from '../screens/machine/machine-context.ts';
import { kindOf } from '../signs/kind.ts';
import { KindSign } from '../signs/kind-sign.tsx';
import { setView } from '../stage/view-state.ts';
import { useStepBack } from '../state/changes.ts';
import { setPreferences } from '../state/preferences.ts';
import { type Action, singleKeys } from './keys.ts';

export interface PaletteItem {
  readonly id: string;
  readonly text: string;
  readonly hint?: string;
  readonly icon?: ReactNode;
  readonly run: () => void;
}

export interface PaletteGroup {
  readonly title: string;
  readonly items: readonly PaletteItem[];
}

const wordsOf = (action: Action): string => {
  if (action.do === 'view') return m.view.lookFrom(m.view.views[action.view]);
  return m.help.keyNames[action.do];
};

/** Everything that can be found or done, in the order in which it is offered. */
export function usePaletteItems(act: (action: Action) => void): PaletteGroup[] {
  const { route, findings, model, machine } = useMachineData();
  const undo = useStepBack(machine.id, 'undo').mutate;
  const redo = useStepBack(machine.id, 'redo').mutate;
  const page = (name: Page, text: string): PaletteItem => ({
    id: `page ${name}`,
    text,
    run: () => go({ ...route, page: name, item: null }),
  });
  const sheet = (name: 'light' | 'dark' | 'system', text: string): PaletteItem => ({
    id: `sheet ${name}`,
    text,
    run: () => setPreferences({ sheet: name }),
  });
  return [
    {
      title: m.palette.groups.pages,
      items: [
        ...stops.map((stop) => page(stop, m.stops[stop])),
        page('round', m.round.title),
        page('requirements', m.requirements.title),
        page('revisions', m.revisions.title),
        page('history', m.history.title),
        page('calculations', m.keep.ofMachine),
        page('site', m.site.title),
        {
          id: 'page calculations',
          text: m.calculations.title,
          run: () => go({ at: 'calculations', name: null, kept: null }),
        },
        { id: 'page start', text: m.problem.toStart, run: () => go({ at: 'start' }) },
      ],
    },
    {
      title: m.palette.groups.commands,
      items: [
        ...Object.entries(singleKeys).map(([key, action]) => ({
          id: `key ${key}`,
          text: wordsOf(action),
          hint: key.toUpperCase(),
          run: () => act(action),
        })),
        ...(machine.canUndo === null
          ? []
          : [{ id: 'undo', text: m.top.undo(machine.canUndo), hint: 'Ctrl Z', run: () => undo() }]),
        ...(machine.canRedo === null
          ? []
          : [{ id: 'redo', text: m.top.redo(machine.canRedo), hint: 'Ctrl Shift Z', run: () => redo() }]),
        sheet('light', m.palette.lightSheet),
        sheet('dark', m.palette.darkSheet),
        sheet('system', m.palette.systemSheet),
      ],
    },
    {
      title: m.palette.groups.findings,
      items: findings.map((f) => ({
        id: `finding ${f.id}`,
        text: f.title,
        icon: <KindSign kind={kindOf(f)} />,
        run: () => go({ ...route, page: 'walk', item: f.id }),
      })),
    },
    {
      title: m.palette.groups.parts,
      items: (model?.parts ?? []).map((part) => ({
        id: `part ${part.id}`,
        text: part.name,
        run: () => {
          setView({ chosen: [part.id] });
          go({ ...route, page: 'model', item: part.id });
        },
      })),
    },
  ];
}
