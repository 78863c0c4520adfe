/** The review in words, for a reader at a terminal. */
import type { Decision, Project } from '@coveline/project';
import type { ReviewResult } from '@coveline/review';
import { keptLine } from './kept-calculations.ts';

const areas = { food: 'food area', splash: 'splash area', nonFood: 'non-food area' } as const;
const decided = {
  change: 'to be changed',
  concession: 'concession',
  doesNotApply: 'does not apply',
} as const;

export interface ReviewedProject {
  readonly project: Project;
  readonly label: string;
  readonly review: ReviewResult;
  readonly decisions: Readonly<Record<string, Decision>>;
}

export function reviewText({ project, label, review, decisions }: ReviewedProject): string {
  const lines = [`${project.name}, ${label}: ${review.findings.length} findings, the gravest first`];
  let rank = 0;
  for (const finding of review.findings) {
    if (finding.consequence.rank !== rank) {
      rank = finding.consequence.rank;
      lines.push('', `Rank ${rank}`);
    }
    const decision = decisions[finding.id];
    lines.push(
      `  ${finding.title}${finding.status === 'notShown' ? ' (not shown yet)' : ''}`,
      `      ${areas[finding.areaClass]}, ${Math.round(finding.height_mm)} mm above floor; ${finding.demand.citations[0]?.source ?? ''} ${finding.demand.citations[0]?.clause ?? ''}`.trimEnd() +
        (decision ? `; ${decided[decision.kind]}` : ''),
    );
  }
  const count = (status: string) => review.requirements.filter((r) => r.status === status).length;
  lines.push(
    '',
    `Requirements: ${count('met')} met, ${count('notMet')} not met, ${count('notShown')} not shown yet, ` +
      `${count('noSuchElement')} without such an element on the machine`,
    ...(project.calculations.length > 0
      ? ['Calculations kept with the machine', ...project.calculations.map(keptLine)]
      : []),
    ...review.notes.map((note) => `Note: ${note}`),
    'This supports a decision; it is no certificate. Safety data sheets, local codes and competent persons decide.',
    '',
  );
  return lines.join('\n');
}
