import type { Photograph } from '@coveline/project';
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { MarkedPhotograph } from './marked-photograph.tsx';

interface Props {
  readonly photographs: readonly Photograph[];
  readonly onChange: (photographs: Photograph[]) => void;
}

/** Photographs of an answer: small, and one of them large with its marks. */
export function Photographs({ photographs, onChange }: Props) {
  const { machine } = useMachineData();
  const [open, setOpen] = useState<string | null>(null);
  const [sending, setSending] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const words = m.photographs;

  const add = async (file: File) => {
    setSending(true);
    setRefusal(null);
    try {
      const kept = await api.sendPhotograph(machine.id, file);
      if (!photographs.some((p) => p.sha256 === kept.sha256))
        onChange([...photographs, { ...kept, marks: [] }]);
      setOpen(kept.sha256);
    } catch (error) {
      setRefusal((error as Error).message);
    } finally {
      setSending(false);
    }
  };
  const shown = photographs.find((p) => p.sha256 === open);
  return (
    <section className="photographs" aria-label={words.title}>
      {photographs.map((p) => (
        <button
          key={p.sha256}
          type="button"
          className="photograph-small"
          aria-expanded={p.sha256 === open}
          aria-label={words.open(p.name, p.marks.length)}
          onClick={() => setOpen(p.sha256 === open ? null : p.sha256)}
        >
          <img src={api.photographAddress(machine.id, p.sha256)} alt="" loading="lazy" />
        </button>
      ))}
      <FileTrigger
        acceptedFileTypes={['image/jpeg', 'image/png']}
        defaultCamera="environment"
        onSelect={(list) => {
          const file = list?.[0];
          if (file) void add(file);
        }}
      >
        <Button className="outlined" isDisabled={sending}>
          {sending ? words.sending : words.add}
        </Button>
      </FileTrigger>
      {refusal ? (
        <p role="alert" className="missing">
          {words.refused(refusal)}
        </p>
      ) : null}
      {shown ? (
        <MarkedPhotograph
          key={shown.sha256}
          photograph={shown}
          onChange={(next) => onChange(photographs.map((p) => (p === shown ? next : p)))}
          onRemove={() => onChange(photographs.filter((p) => p !== shown))}
        />
      ) : null}
    </section>
  );
}
