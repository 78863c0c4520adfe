import type { Decision } from '@coveline/project';
import type { Finding } from '@coveline/review';
import type { ConcessionContent, DecisionContent, Row } from './content.ts';
import type { Printer } from './printable.ts';
import { becauseWords, counted } from './words.ts';

export function decisionContent(decision: Decision | undefined, { text }: Printer): DecisionContent {
  if (!decision) return { kind: 'Not decided', lines: [] };
  const lines: Row[] = [];
  const add = (label: string, value: string): void => {
    if (value) lines.push({ label, value: text(value) });
  };
  switch (decision.kind) {
    case 'change':
      add('Option', decision.option);
      add('Note', decision.note);
      return { kind: 'Change it', lines };
    case 'doesNotApply':
      add('Reason', decision.reason);
      return { kind: 'Does not apply', lines };
    case 'concession':
      add('Reason', decision.reason);
      add('Because', becauseWords[decision.because]);
      decision.controlMeasures.forEach((m, i) => {
        add(`Control measure ${i + 1}`, [m.what, m.interval, m.owner].filter(Boolean).join(' · '));
      });
      add('Alternatives', decision.alternatives ?? '');
      add('Evidence', decision.evidence ?? '');
      add('Granted by', decision.grantedBy);
      add('Approved by', decision.approvedBy || 'nobody yet');
      add('Until', decision.until);
      add('To be looked at on', decision.reviewOn ?? '');
      return { kind: 'Concession', lines };
  }
}

/** Every concession with what keeps it under control; `numbered` are the findings in the order of the file. */
export function concessionsContent(
  numbered: readonly Finding[],
  decisions: Readonly<Record<string, Decision>>,
  date: string,
  { text }: Printer,
): ConcessionContent[] {
  return numbered.flatMap((finding, i) => {
    const decision = decisions[finding.id];
    if (decision?.kind !== 'concession') return [];
    return [
      {
        number: i + 1,
        title: text(finding.title),
        facts: [
          ['Reason', `${decision.reason} (${becauseWords[decision.because]})`],
          ['Alternatives', decision.alternatives ?? ''],
          ['Evidence', decision.evidence ?? ''],
          ['Granted by', decision.grantedBy],
          ['Approved by', decision.approvedBy || 'nobody yet'],
          ['Until', endInWords(decision.until, date)],
          ['To be looked at on', decision.reviewOn ?? ''],
        ].flatMap(([label, value]) => (value ? [{ label, value: text(value) }] : [])),
        measures: decision.controlMeasures.map((m) => ({
          what: text(m.what),
          interval: text(m.interval || 'not stated'),
          owner: text(m.owner || 'not stated'),
        })),
      },
    ];
  });
}

const endInWords = (until: string, date: string) =>
  until < date ? `${until}: it has ended, and the finding is open again` : until;

/** One sentence with the counts. */
export function decidedInWords(
  findings: readonly Finding[],
  decisions: Readonly<Record<string, Decision>>,
): string {
  const count = (kind: Decision['kind']): number =>
    findings.filter((f) => decisions[f.id]?.kind === kind).length;
  const [change, concession, none] = [count('change'), count('concession'), count('doesNotApply')];
  const open = findings.length - change - concession - none;
  return `${counted(findings.length, 'finding')}: ${change} to be changed, ${counted(concession, 'concession')}, ${none} that ${none === 1 ? 'does' : 'do'} not apply, ${open} not decided.`;
}
