import type { MachineSummary } from '@coveline/api';
import { type FormEvent, useState } from 'react';
import {
  Button,
  Dialog,
  Heading,
  Label,
  Modal,
  ModalOverlay,
  ProgressBar,
  Radio,
  RadioGroup,
} from 'react-aria-components';
import { api, uploadModel } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { go } from '../../routing/use-route.ts';
import { Choice } from '../../shell/choice.tsx';
import { WordsField } from '../../shell/words-field.tsx';
import { acceptJob } from '../../state/live.ts';
import { keys, queryClient, useMachines } from '../../state/queries.ts';

interface Props {
  readonly file: File;
  readonly machine: MachineSummary | null;
  readonly onClose: () => void;
}

const ups = ['z', 'y', 'x', '-z', '-y', '-x'];
const units = ['mm', 'cm', 'm', 'in'];
const asNew = 'new machine';

/** Asks what a model file does not say, then sends it. */
export function UploadDialog({ file, machine, onClose }: Props) {
  const machines = useMachines().data ?? [];
  const [into, setInto] = useState(machine?.id ?? asNew);
  const [name, setName] = useState(file.name.replace(/\.\w+$/, ''));
  const [label, setLabel] = useState('');
  const [up, setUp] = useState('z');
  const [unit, setUnit] = useState('file');
  const [sent, setSent] = useState<number | null>(null);
  const [error, setError] = useState<string | null>(null);

  const send = async (event: FormEvent) => {
    event.preventDefault();
    if (into === asNew && name.trim() === '') return setError(m.upload.needName);
    setError(null);
    setSent(0);
    try {
      const id = into === asNew ? (await api.createMachine(name.trim())).id : into;
      // A second try after a failure goes into the machine that the first one made.
      setInto(id);
      const answer = await uploadModel(id, { file, label, up, unit: unit === 'file' ? null : unit }, setSent);
      await queryClient.invalidateQueries({ queryKey: keys.machines });
      await queryClient.invalidateQueries({ queryKey: keys.machine(id) });
      await queryClient.invalidateQueries({ queryKey: keys.jobs(id) });
      acceptJob(answer.job);
      onClose();
      go({ at: 'machine', machine: id, revision: answer.revision, page: 'model', item: null });
    } catch (failure) {
      setError((failure as Error).message);
      setSent(null);
    }
  };

  return (
    <ModalOverlay
      className="veil"
      isOpen
      isDismissable={sent === null}
      onOpenChange={(open) => !open && onClose()}
    >
      <Modal className="modal">
        <Dialog>
          <Heading slot="title">{m.upload.title}</Heading>
          <form onSubmit={send} noValidate className="upload">
            <p>
              {m.upload.file}: <strong>{file.name}</strong>
            </p>
            <Choice
              label={m.upload.machine}
              value={into}
              options={[[asNew, m.upload.newMachine], ...machines.map((x) => [x.id, x.name] as const)]}
              onChange={setInto}
            />
            {into === asNew ? <WordsField label={m.upload.name} value={name} onChange={setName} /> : null}
            <WordsField label={m.upload.label} value={label} onChange={setLabel} hint={m.upload.labelHint} />
            <RadioGroup className="row" orientation="horizontal" value={up} onChange={setUp}>
              <Label>{m.upload.up}</Label>
              {ups.map((axis) => (
                <Radio key={axis} value={axis}>
                  {axis.startsWith('-') ? `−${axis[1]}` : `+${axis}`}
                </Radio>
              ))}
            </RadioGroup>
            <Choice
              label={m.upload.unit}
              value={unit}
              options={[['file', m.upload.asFile], ...units.map((u) => [u, u] as const)]}
              onChange={setUnit}
            />
            <p className="soft">{m.upload.unitHint}</p>
            {error ? (
              <p className="missing" role="alert">
                {error}
              </p>
            ) : null}
            {sent !== null ? (
              <ProgressBar
                value={sent * 100}
                aria-label={m.upload.sending(Math.round(sent * 100))}
                className="job-bar"
              >
                {m.upload.sending(Math.round(sent * 100))}
                <span className="job-track">
                  <span style={{ width: `${sent * 100}%` }} />
                </span>
              </ProgressBar>
            ) : null}
            <div className="dialog-end">
              <Button className="outlined" onPress={onClose} isDisabled={sent !== null}>
                {m.upload.cancel}
              </Button>
              <Button type="submit" className="main" isDisabled={sent !== null}>
                {m.upload.send}
              </Button>
            </div>
          </form>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
