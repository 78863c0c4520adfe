import type { PartChange, PartData } from '@coveline/project';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import { Link } from '../../routing/link.tsx';
import { Choice } from '../../shell/choice.tsx';
import { useChange } from '../../state/changes.ts';
import { useMaterials } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';

/** Sets the data of the chosen parts, one or many at once. */
export function PartEditor({ chosen }: { readonly chosen: readonly string[] }) {
  const { machine, revision, parts, findings, route } = useMachineData();
  const materials = useMaterials(machine.id).data ?? [];
  const change = useChange(machine.id);
  const selected = parts.filter((p) => chosen.includes(p.partId));
  if (selected.length === 0) return <p className="part-editor soft">{m.parts.noneSelected}</p>;

  const same = <K extends keyof PartData>(field: K): PartData[K] | null =>
    selected.every((p) => p[field] === selected[0][field]) ? selected[0][field] : null;
  const set = (wanted: PartChange | null) => {
    for (const p of selected) {
      const before = machine.project.parts[revision!.id]?.[p.partId] ?? {};
      change.mutate({
        do: 'setPart',
        revision: revision!.id,
        part: p.partId,
        change: wanted === null ? null : { ...before, ...wanted },
      });
    }
  };
  const anySet = selected.some((p) => p.setByUser.length > 0);
  const reasons = selected.length === 1 ? selected[0].reasons : [];
  const here = selected.length === 1 ? findings.filter((f) => f.parts.includes(selected[0].partId)) : [];
  return (
    <section className="part-editor" aria-label={m.parts.set}>
      <h2>
        {selected.length === 1 ? selected[0].partId : m.parts.selected(selected.length)}
        {anySet ? (
          <Button className="quiet" onPress={() => set(null)}>
            {m.parts.back}
          </Button>
        ) : null}
      </h2>
      <div className="part-fields">
        <Choice
          label={m.parts.areaClass}
          value={same('areaClass')}
          placeholder={m.parts.mixed}
          options={Object.entries(m.areas)}
          onChange={(v) => set({ areaClass: v as PartData['areaClass'] })}
        />
        <Choice
          label={m.parts.material}
          value={same('material')}
          placeholder={m.parts.mixed}
          options={[['unknown', m.parts.unknownMaterial], ...materials.map((x) => [x.id, x.name] as const)]}
          onChange={(material) => set({ material })}
        />
        <QuantityField
          label={m.parts.finish}
          value={same('finish_Ra_um')}
          unit="um"
          low={0.001}
          high={1000}
          optional
          placeholder={selected.every((p) => p.finish_Ra_um === null) ? m.parts.unknown : ''}
          onChange={(finish_Ra_um) => set({ finish_Ra_um })}
        />
        <Choice
          label={m.parts.joint}
          value={same('joint')}
          placeholder={m.parts.mixed}
          options={Object.entries(m.joints)}
          onChange={(v) => set({ joint: v as PartData['joint'] })}
        />
      </div>
      {reasons.length > 0 ? (
        <>
          <h3>{m.parts.reasons}</h3>
          <ul className="plain soft">
            {reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </>
      ) : null}
      {here.length > 0 ? (
        <>
          <h3>{m.parts.openFinding}</h3>
          <ul className="plain">
            {here.map((f) => (
              <li key={f.id}>
                <Link to={{ ...route, page: 'walk', item: f.id }}>{f.title}</Link>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
