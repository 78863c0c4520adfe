import { plural } from './plural.ts';

/** The start and opening a model. */
export const start = {
  start: {
    title: 'Machines',
    open: 'Open a model …',
    drop: 'Drop a STEP, STL, OBJ, 3MF or GLB file here, or choose one.',
    dropNow: 'Let go to open this model.',
    none: 'No machine yet. Open a model to begin.',
    invented: 'invented',
    state: {
      reading: 'being read',
      failed: 'could not be read',
      unread: 'not read yet',
      surveyed: (findings: number, decided: number) =>
        `${plural(findings, 'finding', 'findings')}, ${decided} decided`,
      read: 'read, not surveyed',
      outdated: 'to be measured again',
    },
    parts: (n: string) => `${n} parts`,
    triangles: (n: string) => `${n} triangles`,
    changed: (when: string) => `changed ${when}`,
    hasFile: 'file made',
  },
  upload: {
    title: 'Open a model',
    file: 'Model file',
    machine: 'Machine',
    newMachine: 'A new machine',
    name: 'Name of the machine',
    label: 'Revision',
    labelHint: 'As the builder calls it, such as “B” or “2026-03”.',
    up: 'Which axis of the file points up?',
    unit: 'Unit of the file',
    unitHint: 'STEP files carry their unit. STL and OBJ files do not.',
    asFile: 'as the file says',
    send: 'Open',
    sending: (percent: number) => `Sending, ${percent} %`,
    cancel: 'Cancel',
    needName: 'Give the machine a name.',
  },
};
