import type { MeasureName } from '@coveline/survey';
import { Button, Header, Menu, MenuItem, MenuSection, MenuTrigger, Popover } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { setView, useViewState } from './view-state.ts';

interface Props {
  readonly colorable: boolean;
  /** False while a finding paints its own measure. */
  readonly paintable: boolean;
}

const measures = Object.keys(m.measures) as (keyof typeof m.measures & MeasureName)[];

/** What the surface shows: its own colour, the area class, or a measure. */
export function PaintMenu({ colorable, paintable }: Props) {
  const { paint, colorBy } = useViewState();
  return (
    <MenuTrigger>
      <Button className="tool">
        {paint && paintable
          ? m.view.painted(m.measures[paint as (typeof measures)[number]].name)
          : m.view.paint}{' '}
        ▾
      </Button>
      <Popover placement="bottom start">
        <Menu>
          <MenuSection
            selectionMode="single"
            selectedKeys={[paint ?? 'none']}
            onSelectionChange={(keys) => {
              const [key] = keys === 'all' ? [] : [...keys];
              setView({ paint: key === undefined || key === 'none' ? null : (key as MeasureName) });
            }}
          >
            <Header>{m.view.paint}</Header>
            <MenuItem id="none">{m.view.paintNone}</MenuItem>
            {measures.map((measure) => (
              <MenuItem key={measure} id={measure}>
                {m.measures[measure].name}
              </MenuItem>
            ))}
          </MenuSection>
          {colorable ? (
            <MenuSection
              selectionMode="single"
              disallowEmptySelection
              selectedKeys={[colorBy]}
              onSelectionChange={(keys) => {
                const [key] = keys === 'all' ? [] : [...keys];
                if (key === 'model' || key === 'area') setView({ colorBy: key });
              }}
            >
              <Header>{m.view.colorBy}</Header>
              <MenuItem id="model">{m.view.colors.model}</MenuItem>
              <MenuItem id="area">{m.view.colors.area}</MenuItem>
            </MenuSection>
          ) : null}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
