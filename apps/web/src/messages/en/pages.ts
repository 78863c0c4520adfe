import { plural } from './plural.ts';

/** History, file and the stops to come. */
export const pages = {
  history: {
    title: 'History',
    intro: 'Every change, newest first. It is also the record for the auditor.',
    columns: { when: 'When', who: 'Who', what: 'What' },
    kinds: { do: '', undo: 'undone:', redo: 'redone:' },
    none: 'Nothing was changed yet.',
  },
  file: {
    title: 'File',
    intro:
      'One PDF with brief, machine, findings with pictures, decisions and concessions, the table of requirements, the calculations kept with the machine, the working of each number, and the cautions.',
    make: 'Make the file',
    makeAgain: 'Make it again',
    open: 'Open the file',
    none: 'No file was made for this revision yet.',
    there: 'The file of this revision is ready. It holds the state at the time when it was made.',
    open_findings: (n: number) =>
      n === 0
        ? 'Every finding is decided.'
        : `${plural(n, 'finding is', 'findings are')} still open; the file says so.`,
    summary: 'What goes into it',
    findings: 'findings',
    changes: 'to be changed',
    concessions: 'concessions',
    doesNotApply: 'do not apply',
    openOnes: 'open',
    notSurveyed: 'The file can be made when the model is read and measured.',
  },
};
