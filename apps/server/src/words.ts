import type { Command, Decision, Project } from '@coveline/project';
import type { ReviewResult } from '@coveline/review';

/** A command in words, for the history and for the labels of undo and redo. `review`: of its revision, where known. */
export function commandInWords(command: Command, before: Project, review: ReviewResult | null): string {
  switch (command.do) {
    case 'rename':
      return `Renamed to “${command.name}”`;
    case 'setBrief':
      return 'Changed the brief';
    case 'setPart': {
      const part = command.part.split('/').at(-1);
      if (command.change === null) return `Returned ${part} to its proposals`;
      const fields = Object.keys(command.change).map((key) => fieldNames[key as keyof typeof fieldNames]);
      return `Set ${fields.join(', ') || 'nothing'} of ${part}`;
    }
    case 'decide': {
      const title = review?.findings.find((f) => f.id === command.finding)?.title;
      const on = title === undefined ? `finding ${command.finding}` : `“${title}”`;
      return command.decision === null
        ? `Withdrew the decision on ${on}`
        : decisionInWords(command.decision, on);
    }
    case 'setRevision': {
      const revision = before.revisions.find((r) => r.id === command.revision);
      if (revision && revision.up !== command.up)
        return `Turned revision ${command.label}: ${command.up} is up`;
      return `Named revision ${revision?.label ?? command.revision} “${command.label}”`;
    }
  }
}

const fieldNames = {
  areaClass: 'area class',
  material: 'material',
  finish_Ra_um: 'surface finish',
  joint: 'joint',
} as const;

function decisionInWords(decision: Decision, on: string): string {
  switch (decision.kind) {
    case 'change':
      return `Decided to change: ${on}`;
    case 'concession':
      return `Granted a concession until ${decision.until}: ${on}`;
    case 'doesNotApply':
      return `Declared not applicable: ${on}`;
  }
}
