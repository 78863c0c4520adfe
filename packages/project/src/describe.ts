/** Commands in words, for the history and for "undo …". */
import type { Command } from './command.ts';
import type { KeptCalculation } from './kept-calculation.ts';
import type { Brief, PartChange, Project } from './schema.ts';
import type { SiteItem } from './site.ts';

/** One phrase without a full stop, such as `Set "cover" to splash area`. `project` is the one before the command. */
export function describeCommand(command: Command, project: Project): string {
  switch (command.do) {
    case 'rename':
      return `Rename the machine to "${command.name}"`;
    case 'setBrief':
      return describeBrief(project.brief, command.brief);
    case 'setPart':
      return describePart(command.part, command.change);
    case 'decide':
      return describeDecision(command);
    case 'answer':
      return describeAnswer(command);
    case 'setGroup':
      return describeGroup(command, project);
    case 'setResult':
      return command.set === null
        ? 'Remove the result of a sample'
        : `Note a result of ${command.set.on} for ${command.set.of}`;
    case 'setRevision':
      return describeRevision(command, project);
    case 'setSite':
      return describeSite(command, project);
    case 'setCalculation':
      return describeCalculation(command, project);
    case 'setPack':
      return describePack(command, project);
  }
}

const briefWords: Record<keyof Brief, string> = {
  purpose: 'the purpose',
  products: 'the products',
  consumers: 'who eats it',
  environment: 'the room',
  cleaning: 'the cleaning',
  careLevel: 'the level of care',
  profile: 'the profile of sources',
  acceptedPool_mL: 'the pool that is accepted',
};

function describeBrief(before: Brief, after: Brief): string {
  const keys = Object.keys(briefWords) as (keyof Brief)[];
  const changed = keys.filter((k) => JSON.stringify(before[k]) !== JSON.stringify(after[k]));
  if (changed.length === 0) return 'Keep the brief as it is';
  return `Change ${list(changed.map((k) => briefWords[k]))} in the brief`;
}

const areaWords = { food: 'food area', splash: 'splash area', nonFood: 'non-food area' } as const;

function describePart(part: string, change: PartChange | null): string {
  const name = `"${lastName(part)}"`;
  if (change === null) return `Return ${name} to its proposals`;
  const what: string[] = [];
  if (change.areaClass) what.push(areaWords[change.areaClass]);
  if (change.material) what.push(`material ${change.material}`);
  if (change.finish_Ra_um !== undefined)
    what.push(change.finish_Ra_um === null ? 'finish not known' : `Ra ${change.finish_Ra_um} µm`);
  if (change.joint) what.push(`joint ${change.joint}`);
  return what.length === 0 ? `Leave ${name} as proposed` : `Set ${name} to ${list(what)}`;
}

function describeDecision({ finding, decision }: Extract<Command, { do: 'decide' }>): string {
  if (decision === null) return `Withdraw the decision on ${finding}`;
  switch (decision.kind) {
    case 'change':
      return `Decide to change what ${finding} shows`;
    case 'concession':
      return `Grant a concession on ${finding} until ${decision.until}`;
    case 'doesNotApply':
      return `Decide that ${finding} does not apply`;
  }
}

const answerWords = {
  asItShould: 'as it should be',
  notAsItShould: 'not as it should be',
  notHere: 'not on this machine',
} as const;

function describeAnswer({ item, answer }: Extract<Command, { do: 'answer' }>): string {
  return answer === null ? `Take back the answer to ${item}` : `Answer ${item}: ${answerWords[answer.state]}`;
}

function describeGroup(
  { revision, group, set }: Extract<Command, { do: 'setGroup' }>,
  project: Project,
): string {
  const before = project.cleaning[revision]?.[group];
  if (set === null) return `Return the cleaning of "${before?.name ?? group}" to what is proposed`;
  return before && before.steps.length !== set.steps.length
    ? `Change the steps of cleaning "${set.name}"`
    : `Set the cleaning of "${set.name}"`;
}

function describeRevision(command: Extract<Command, { do: 'setRevision' }>, project: Project): string {
  const before = project.revisions.find((r) => r.id === command.revision);
  const what: string[] = [];
  if (before?.label !== command.label) what.push(`name it "${command.label}"`);
  if (before?.up !== command.up) what.push(`let ${command.up} point up`);
  const name = before?.label ?? command.revision;
  return what.length === 0 ? `Leave revision "${name}" as it is` : `Revision "${name}": ${list(what)}`;
}

const siteWords: Readonly<Record<SiteItem['what'], string>> = {
  floor: 'floor',
  wall: 'wall',
  access: 'access side',
  door: 'door',
  mouth: 'open container',
  filter: 'filter face',
  nozzle: 'nozzle',
  drain: 'drain',
  main: 'line of tubes',
};

function describeSite(
  { revision, item, change }: Extract<Command, { do: 'setSite' }>,
  project: Project,
): string {
  const before = project.site[revision]?.[item] ?? null;
  if (change?.do === 'set') {
    const verb = before?.do === 'set' ? 'Change' : 'Set';
    return `${verb} the ${siteWords[change.item.what]} "${lastName(item)}" of the site`;
  }
  const name = `"${lastName(item)}" of the site`;
  if (change === null) return `Return ${name} to what is proposed`;
  return change.do === 'accept' ? `Accept ${name}` : `Leave ${name} out`;
}

const calculationWords: Partial<Record<keyof KeptCalculation, string>> = {
  calculation: 'the formula',
  inputs: 'the values',
  locale: 'how numbers are written',
  note: 'the note',
  about: 'where it belongs',
};

function describeCalculation(
  { calculation, kept }: Extract<Command, { do: 'setCalculation' }>,
  project: Project,
): string {
  const before = project.calculations.find((k) => k.id === calculation);
  if (kept === null) return `Remove the calculation "${before?.title ?? calculation}"`;
  if (!before) return `Keep the calculation "${kept.title}"`;
  const differs = (key: keyof typeof kept) => JSON.stringify(before[key]) !== JSON.stringify(kept[key]);
  const keys = Object.keys(calculationWords) as (keyof typeof kept)[];
  const what = keys.filter(differs).map((key) => calculationWords[key]!);
  const name = `the calculation "${before.title}"`;
  if (before.title !== kept.title) {
    const more = what.length === 0 ? '' : ` and change ${list(what)}`;
    return `Rename ${name} to "${kept.title}"${more}`;
  }
  if (what.length > 0) return `Change ${list(what)} in ${name}`;
  return differs('gave') ? `Take over what ${name} gives now` : `Leave ${name} as it is`;
}

function describePack({ name, pack }: Extract<Command, { do: 'setPack' }>, project: Project): string {
  if (pack === null) return `Remove the pack "${name}"`;
  return project.packs.some((p) => p.name === name) ? `Replace the pack "${name}"` : `Add the pack "${name}"`;
}

/** Part ids are paths through the assembly; people know the last name. */
const lastName = (part: string) => part.slice(part.lastIndexOf('/') + 1);

function list(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
