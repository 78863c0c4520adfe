import type { PartData } from '@coveline/project';
import { useState } from 'react';
import { Cell, Column, Row, Table, TableBody, TableHeader } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Choice } from '../../shell/choice.tsx';
import { WordsField } from '../../shell/words-field.tsx';
import { setView, useViewState } from '../../stage/view-state.ts';
import { useMaterials } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';

type Field = PartData['setByUser'][number];

/** All parts with their data; proposals slant. Choosing rows chooses parts in the view, and the other way round. */
export function PartsTable() {
  const { machine, parts, model } = useMachineData();
  const materials = useMaterials(machine.id).data ?? [];
  const { chosen } = useViewState();
  const [text, setText] = useState('');
  const [area, setArea] = useState('all');
  const names = new Map(model?.parts.map((p) => [p.id, p.name]));
  const name = (part: PartData) => names.get(part.partId) ?? part.partId;
  const shown = parts.filter(
    (p) =>
      p.partId.toLocaleLowerCase().includes(text.toLocaleLowerCase()) &&
      (area === 'all' || p.areaClass === area),
  );
  const materialName = (id: string) =>
    id === 'unknown' ? m.parts.unknown : (materials.find((x) => x.id === id)?.name ?? id);

  return (
    <>
      <div className="filters">
        <WordsField label={m.parts.filter} value={text} onChange={setText} />
        <Choice
          label={m.parts.filterArea}
          value={area}
          options={[['all', m.walk.anyArea], ...Object.entries(m.areas)]}
          onChange={setArea}
        />
      </div>
      <p className="soft parts-words" role="status">
        {m.parts.count(shown.length, parts.length)}. {m.parts.proposals}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key. */}
      <section className="parts-scroll" aria-label={m.parts.title} tabIndex={0}>
        <Table
          aria-label={m.parts.title}
          className="parts"
          selectionMode="multiple"
          selectionBehavior="replace"
          selectedKeys={new Set(chosen)}
          onSelectionChange={(keys) =>
            setView({ chosen: keys === 'all' ? shown.map((p) => p.partId) : [...keys].map(String) })
          }
        >
          <TableHeader>
            <Column isRowHeader>{m.parts.columns.name}</Column>
            <Column>{m.parts.columns.areaClass}</Column>
            <Column>{m.parts.columns.material}</Column>
            <Column>{m.parts.columns.finish}</Column>
            <Column>{m.parts.columns.joint}</Column>
          </TableHeader>
          <TableBody renderEmptyState={() => m.palette.none}>
            {shown.map((p) => (
              <Row key={p.partId} id={p.partId} textValue={name(p)}>
                <Cell>
                  <span title={p.partId}>{name(p)}</span>
                </Cell>
                <Cell>
                  <Value part={p} field="areaClass" words={m.areasShort[p.areaClass]} />
                </Cell>
                <Cell>
                  <Value part={p} field="material" words={materialName(p.material)} />
                </Cell>
                <Cell>
                  <Value
                    part={p}
                    field="finish_Ra_um"
                    words={p.finish_Ra_um === null ? m.parts.unknown : show(p.finish_Ra_um, 'um')}
                  />
                </Cell>
                <Cell>
                  <Value part={p} field="joint" words={m.joints[p.joint]} />
                </Cell>
              </Row>
            ))}
          </TableBody>
        </Table>
      </section>
    </>
  );
}

function Value({
  part,
  field,
  words,
}: {
  readonly part: PartData;
  readonly field: Field;
  readonly words: string;
}) {
  if (part.setByUser.includes(field)) return <span className="set">{words}</span>;
  return (
    <span className="proposed" title={m.parts.proposal}>
      {words}
    </span>
  );
}
