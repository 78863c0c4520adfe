import type { MachineSummary } from '@coveline/api';
import { useState } from 'react';
import { Button, DropZone, FileTrigger, Text } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { UploadDialog } from './upload-dialog.tsx';

interface Props {
  /** The machine that gets a new revision; null for a new machine. */
  readonly machine: MachineSummary | null;
  /** Whether a file can also be dropped here. */
  readonly droppable?: boolean;
}

const accepted = ['.step', '.stp', '.stl', '.obj', '.3mf', '.glb'];

/** Chooses a model file, by the file picker or by dropping it. */
export function OpenModel({ machine, droppable = false }: Props) {
  const [file, setFile] = useState<File | null>(null);
  const button = (
    <FileTrigger acceptedFileTypes={accepted} onSelect={(list) => setFile(list?.[0] ?? null)}>
      <Button className={droppable ? 'main' : 'outlined'}>{m.start.open}</Button>
    </FileTrigger>
  );
  return (
    <>
      {droppable ? (
        <DropZone
          className="drop"
          onDrop={async (event) => {
            const item = event.items.find((i) => i.kind === 'file');
            if (item?.kind === 'file') setFile(await item.getFile());
          }}
        >
          {({ isDropTarget }) => (
            <>
              <Text slot="label">{isDropTarget ? m.start.dropNow : m.start.drop}</Text>
              {button}
            </>
          )}
        </DropZone>
      ) : (
        button
      )}
      {file ? <UploadDialog file={file} machine={machine} onClose={() => setFile(null)} /> : null}
    </>
  );
}
