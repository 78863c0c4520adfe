import { againstBefore, type CalculationEntry, type TypedRun } from '@coveline/engineering';
import { type FormEvent, useState } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { WordsField } from '../../shell/words-field.tsx';
import { accept } from '../../state/changes.ts';
import { useMachines } from '../../state/queries.ts';
import type { Given } from './given.ts';
import type { KeptHere } from './kept-here.ts';
import { newId } from './new-id.ts';
import { typedTexts } from './typed-texts.ts';

interface Props {
  readonly entry: CalculationEntry;
  readonly given: Given;
  readonly locale: string;
  readonly run: TypedRun | null;
  readonly onKept: (machine: KeptHere['machine']) => void;
  readonly onClose: () => void;
}

/** Asks with which machine and under which title, and keeps it there. */
export function KeepDialog({ entry, given, locale, run, onKept, onClose }: Props) {
  const machines = useMachines().data;
  const [chosen, setChosen] = useState<string | null>(null);
  const [title, setTitle] = useState(entry.title);
  const [note, setNote] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [underWay, setUnderWay] = useState(false);
  const machine = machines?.find((one) => one.id === chosen) ?? (machines?.length === 1 ? machines[0] : null);

  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (!machine) return setProblem(m.keep.needMachine);
    if (title.trim() === '') return setProblem(m.keep.needTitle);
    setProblem(null);
    setUnderWay(true);
    try {
      const gave = run === null ? undefined : againstBefore(entry, run, undefined).gives;
      const kept = {
        calculation: entry.name,
        title: title.trim().slice(0, 200),
        note,
        inputs: await typedTexts(given, entry),
        locale,
        ...(gave !== undefined && { gave }),
      };
      accept(await api.command(machine.id, { do: 'setCalculation', calculation: newId(), kept }));
      onKept({ id: machine.id, name: machine.name });
    } catch (error) {
      setProblem((error as Error).message);
      setUnderWay(false);
    }
  };

  return (
    <ModalOverlay
      className="veil"
      isOpen
      isDismissable={!underWay}
      onOpenChange={(open) => !open && onClose()}
    >
      <Modal className="modal">
        <Dialog>
          <Heading slot="title">{m.keep.withMachineTitle}</Heading>
          <form className="upload" onSubmit={keep} noValidate>
            {machines?.length === 0 ? <p>{m.keep.noMachine}</p> : null}
            <Choice
              label={m.keep.machine}
              value={machine?.id ?? null}
              options={(machines ?? []).map((one) => [one.id, one.name] as const)}
              placeholder={m.calculations.choose}
              onChange={setChosen}
            />
            <WordsField label={m.keep.title} value={title} onChange={setTitle} />
            <WordsField
              label={m.keep.note}
              value={note}
              onChange={setNote}
              lines={3}
              hint={m.keep.noteHint}
            />
            {run?.outcome.kind === 'refused' ? <p className="soft">{m.keep.withoutNumber}</p> : null}
            {problem ? (
              <p className="missing" role="alert">
                {problem}
              </p>
            ) : null}
            <div className="dialog-end">
              <Button className="outlined" onPress={onClose} isDisabled={underWay}>
                {m.upload.cancel}
              </Button>
              <Button type="submit" className="main" isDisabled={underWay}>
                {m.keep.do}
              </Button>
            </div>
          </form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
