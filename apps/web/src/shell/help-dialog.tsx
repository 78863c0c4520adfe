import {
  Button,
  Dialog,
  Heading,
  Label,
  Modal,
  ModalOverlay,
  Radio,
  RadioGroup,
  Switch,
} from 'react-aria-components';
import { m } from '../messages/index.ts';
import { setPreferences, usePreferences } from '../state/preferences.ts';
import { closeDialog, useOpenDialog } from './open-dialog.ts';

const k = m.help.keyNames;

const always = [
  ['Ctrl K', k.palette],
  ['Ctrl Z', k.undo],
  ['Ctrl Shift Z', k.redo],
] as const;
const single = [
  ['J', k.next],
  ['K', k.previous],
  ['L', k.list],
  ['F', k.fit],
  ['1 – 7', k.views],
  ['P', k.parallel],
  ['S', k.section],
  ['M', k.measure],
  ['H', k.hide],
  ['I', k.isolate],
  ['G', k.ghost],
  ['A', k.showAll],
  ['?', k.help],
] as const;
const inView = [
  ['← → ↑ ↓', k.turn],
  ['Shift + ← → ↑ ↓', k.move],
  ['+ −', k.zoom],
  ['Home', k.all],
] as const;

export function HelpDialog() {
  const open = useOpenDialog() === 'help';
  const preferences = usePreferences();
  return (
    <ModalOverlay className="veil" isDismissable isOpen={open} onOpenChange={(o) => !o && closeDialog()}>
      <Modal className="modal">
        <Dialog>
          <Heading slot="title">{m.help.title}</Heading>
          <div className="help">
            <section>
              <h3>{m.help.always}</h3>
              <Keys rows={always} />
              <h3>{m.help.inView}</h3>
              <Keys rows={inView} />
              <p className="soft">{m.help.mouse}</p>
            </section>
            <section>
              <h3>{m.help.single}</h3>
              <Keys rows={single} />
            </section>
            <section>
              <h3>{m.help.settings}</h3>
              <RadioGroup
                value={preferences.sheet}
                onChange={(sheet) => setPreferences({ sheet: sheet as typeof preferences.sheet })}
              >
                <Label>{m.help.sheet}</Label>
                {(['system', 'light', 'dark'] as const).map((sheet) => (
                  <Radio key={sheet} value={sheet}>
                    {m.help.sheets[sheet]}
                  </Radio>
                ))}
              </RadioGroup>
              <Switch
                isSelected={preferences.singleKeys}
                onChange={(singleKeys) => setPreferences({ singleKeys })}
              >
                <span className="switch" /> {m.help.singleKeys}
              </Switch>
              <Switch
                isSelected={preferences.antialias}
                onChange={(antialias) => setPreferences({ antialias })}
              >
                <span className="switch" /> {m.help.antialias}
              </Switch>
              <p className="soft">{m.decisionSupport}</p>
            </section>
          </div>
          <div className="dialog-end">
            <Button slot="close" className="outlined">
              {m.help.close}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Keys({ rows }: { readonly rows: readonly (readonly [string, string])[] }) {
  return (
    <dl className="keys">
      {rows.map(([key, what]) => (
        <div key={key}>
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}
