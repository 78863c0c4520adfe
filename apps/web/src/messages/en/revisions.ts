/** Two revisions side by side. */
export const revisions = {
  revisions: {
    title: 'What changed',
    intro:
      'Findings of two revisions, matched by demand, place and part. A part that was renamed, moved or cut in two is known again.',
    onlyOne: 'There is one revision only. Open the next model of this machine to compare.',
    before: 'Compare with',
    notYet: 'Both revisions have to be surveyed first.',
    totals: 'Totals',
    columns: {
      what: 'What',
      before: 'Before',
      after: 'Now',
      change: 'Change',
      finding: 'Finding',
      decision: 'Decision before',
    },
    notKnown: '–',
    changes: {
      new: 'New',
      worse: 'Worse',
      unchanged: 'Unchanged',
      better: 'Better',
      mended: 'Mended',
    },
    none: 'none',
    stands: (what: string, because: string) => `${what}. Still holds: ${because}`,
    falls: (what: string, because: string) => `${what}. To be decided again: ${because}`,
    carry: 'Carry over',
    carryNamed: (title: string) => `Carry over: ${title}`,
    carryAll: (n: number) =>
      n === 1 ? 'Carry over the decision that still holds' : `Carry over the ${n} decisions that still hold`,
    parts: 'Parts',
    renamed: (n: number) => `${n} renamed`,
    split: (n: number) => `${n} cut in pieces`,
    added: (n: number) => `${n} added`,
    removed: (n: number) => `${n} removed`,
  },
};
