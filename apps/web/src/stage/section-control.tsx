import { bounds } from '@coveline/model';
import type { SectionAxis } from '@coveline/viewer';
import {
  Group,
  Label,
  Radio,
  RadioGroup,
  Slider,
  SliderThumb,
  SliderTrack,
  Switch,
} from 'react-aria-components';
import { m } from '../messages/index.ts';
import { QuantityField } from '../numbers/quantity-field.tsx';
import { useMachineData } from '../screens/machine/machine-context.ts';
import { setView, useViewState } from './view-state.ts';

const axisNames: readonly SectionAxis[] = ['x', 'y', 'z'];

/** Where the section plane stands: by number, or by sliding. */
export function SectionControl() {
  const { section } = useViewState();
  const { model } = useMachineData();
  if (!section || !model) return null;
  const [low, high] = bounds(model);
  const k = axisNames.indexOf(section.axis);
  const set = (change: Partial<typeof section>) => setView({ section: { ...section, ...change } });
  return (
    <Group className="section-control" aria-label={m.view.section}>
      <RadioGroup
        className="row"
        orientation="horizontal"
        value={section.axis}
        onChange={(axis) => {
          const index = axisNames.indexOf(axis as SectionAxis);
          set({ axis: axis as SectionAxis, at_mm: Math.round((low[index] + high[index]) / 2) });
        }}
      >
        <Label>{m.view.sectionAxis}</Label>
        {axisNames.map((axis) => (
          <Radio key={axis} value={axis}>
            {axis}
          </Radio>
        ))}
      </RadioGroup>
      <QuantityField
        label={m.view.sectionAt}
        value={section.at_mm}
        unit="mm"
        low={Math.floor(low[k])}
        high={Math.ceil(high[k])}
        onChange={(at) => at !== null && set({ at_mm: at })}
      />
      <Slider
        aria-label={m.view.sectionAt}
        className="slider"
        minValue={Math.floor(low[k])}
        maxValue={Math.ceil(high[k])}
        step={1}
        value={section.at_mm}
        onChange={(at) => set({ at_mm: Number(at) })}
      >
        <SliderTrack className="slider-track">
          <SliderThumb className="slider-thumb" />
        </SliderTrack>
      </Slider>
      <Switch isSelected={section.flipped} onChange={(flipped) => set({ flipped })}>
        <span className="switch" /> {m.view.sectionFlip}
      </Switch>
      <p className="soft">{m.view.sectionNote}</p>
    </Group>
  );
}
