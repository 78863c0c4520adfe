import { Button, Group, ToggleButton, Toolbar } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { show } from '../numbers/show.ts';
import { useMachineData } from '../screens/machine/machine-context.ts';
import type { Action } from '../shell/keys.ts';
import { useAct } from '../shell/use-act.ts';
import { CameraScale } from './camera-scale.tsx';
import { HiddenParts } from './hidden-parts.tsx';
import { PaintLegend } from './paint-legend.tsx';
import { PaintMenu } from './paint-menu.tsx';
import { SectionControl } from './section-control.tsx';
import { SideMenu, sides } from './side-menu.tsx';
import { Triad } from './triad.tsx';
import { useViewState } from './view-state.ts';
import './view.css';

/** What can be done with the view, over its upper and lower border. */
export function ViewTools() {
  const act = useAct();
  const view = useViewState();
  const { model, parts, route } = useMachineData();
  if (!model) return null;
  const names = new Map(model.parts.map((p) => [p.id, p.name]));
  const toggle = (action: Action, on: boolean, text: string) => (
    <ToggleButton className="tool" isSelected={on} onChange={() => act(action)}>
      {text}
    </ToggleButton>
  );
  return (
    <>
      <Toolbar className="view-tools" aria-label={m.view.tools}>
        <Button className="tool" onPress={() => act({ do: 'fit' })}>
          {m.view.fit}
        </Button>
        <SideMenu />
        <Group className="tool-group tool-sides" aria-label={m.view.side}>
          {sides.map((side) => (
            <Button
              key={side}
              className="tool"
              aria-label={m.view.lookFrom(m.view.views[side])}
              onPress={() => act({ do: 'view', view: side })}
            >
              {m.view.views[side]}
            </Button>
          ))}
        </Group>
        {toggle({ do: 'parallel' }, view.projection === 'parallel', m.view.parallel)}
        {toggle({ do: 'section' }, view.section !== null, m.view.section)}
        {toggle({ do: 'measure' }, view.measuring, m.view.measure)}
        <PaintMenu colorable={parts.length > 0} paintable={route.item === null || route.page !== 'walk'} />
        {view.chosen.length > 0 ? (
          <Group className="tool-group" aria-label={m.parts.selected(view.chosen.length)}>
            {(['hide', 'isolate', 'ghost'] as const).map((what) => (
              <Button key={what} className="tool" onPress={() => act({ do: what })}>
                {m.view[what]}
              </Button>
            ))}
          </Group>
        ) : null}
      </Toolbar>
      {view.section ? <SectionControl /> : null}
      {view.measuring ? <p className="view-hint">{m.view.measureHint}</p> : null}
      <div className="view-foot">
        <Triad />
        <p className="view-state">
          {view.section
            ? m.view.sectionOn(view.section.axis, show(view.section.at_mm, 'mm', 5))
            : m.view.sectionOff}{' '}
          · <HiddenParts names={names} /> · <CameraScale />
        </p>
        <PaintLegend />
      </div>
    </>
  );
}
