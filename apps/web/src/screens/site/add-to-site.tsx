import { bounds } from '@coveline/model';
import { type SiteItem, siteItem } from '@coveline/project';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { useMachineData } from '../machine/machine-context.ts';

const kinds = siteItem.options.map((option) => option.shape.what.value);

/** Adds something that nothing proposes, in the middle of the machine until it is told better. */
export function AddToSite({ onAdd }: { readonly onAdd: (item: SiteItem) => void }) {
  const { model } = useMachineData();
  const [what, setWhat] = useState<SiteItem['what']>('nozzle');
  const add = () => {
    if (!model) return;
    const [low, high] = bounds(model);
    const middle = [0, 1, 2].map((i) => Math.round((low[i] + high[i]) / 2)) as [number, number, number];
    onAdd(fresh(what, middle, low[2], model.parts[0].id));
  };
  return (
    <div className="site-add">
      <Choice
        label={m.site.addWhat}
        value={what}
        options={kinds.map((kind) => [kind, m.site.one[kind]] as const)}
        onChange={(kind) => setWhat(kind as SiteItem['what'])}
      />
      <Button className="outlined" isDisabled={!model} onPress={add}>
        {m.site.add}
      </Button>
    </div>
  );
}

function fresh(
  what: SiteItem['what'],
  at_mm: [number, number, number],
  floor_mm: number,
  part: string,
): SiteItem {
  switch (what) {
    case 'floor':
      return { what, height_mm: floor_mm };
    case 'wall':
      return { what, at_mm, into: [0, -1, 0] };
    case 'access':
      return { what, outward: [0, -1, 0] };
    case 'door':
      return { what, parts: [part], hinge: { at_mm, axis: [0, 0, 1] } };
    case 'mouth':
      return { what, parts: [], at_mm, outward: [0, 0, 1], radius_mm: 50 };
    case 'filter':
      return { what, parts: [], at_mm, flow: [0, 0, -1], across_mm: [300, 0, 0], along_mm: [0, 150, 0] };
    case 'nozzle':
      return { what, parts: [], at_mm, direction: [0, 0, -1], cone_deg: 60, range_mm: 1500 };
    case 'drain':
      return { what, at_mm, diameter_mm: 25 };
    case 'main':
      return { what, parts: [part] };
  }
}
