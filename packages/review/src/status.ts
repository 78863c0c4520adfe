/** Every requirement in force gets a line: met, not met, not shown, or no such element. Nothing is silently met. */
import { type Demand, type Evidence, elements, type MeasureKey } from '@coveline/catalogue';
import type { RuleResult } from './draft.ts';
import { some, theName } from './names/display.ts';
import type { Noun } from './names/nouns.ts';
import { presentElements } from './parts/elements.ts';
import { toldOnRound } from './round/evidence.ts';
import { type Round, roundOf } from './round/round.ts';
import { isComputed, type Scene } from './scene.ts';
import type { Finding, RequirementStatus } from './types.ts';

const alwaysThere = new Set(elements.filter((e) => e.always).map((e) => e.id));
const elementName = new Map(elements.map((e) => [e.id, e.name.toLowerCase()]));

export function statusesOf(
  scene: Scene,
  findings: readonly Finding[],
  rules: readonly RuleResult[],
): readonly RequirementStatus[] {
  const present = presentElements(scene.known);
  const round = roundOf(scene);
  return [...scene.demands.values()].map((demand) =>
    statusOf(scene, demand, findings, rules, present, round),
  );
}

function statusOf(
  scene: Scene,
  demand: Demand,
  findings: readonly Finding[],
  rules: readonly RuleResult[],
  present: ReadonlySet<string>,
  round: Round,
): RequirementStatus {
  const own = findings.filter(
    (f) => isCaseOf(scene, f.requirement, demand.id) || tellsOn(scene, f, demand, rules),
  );
  const line = (status: RequirementStatus['status'], basis: string): RequirementStatus => ({
    requirement: demand.id,
    status,
    basis,
    findings: own.map((f) => f.id),
  });
  if (own.some((f) => f.status === 'notMet'))
    return line('notMet', `${own.length} ${own.length === 1 ? 'finding' : 'findings'}: ${own[0].title}`);
  if (own.length > 0) return line('notShown', own[0].title);
  const told = toldOnRound(round, demand);
  if (told) return line(told.status, told.basis);
  const idle = rules.map((r) => r.idle?.[demand.id]).find((reason) => reason !== undefined);
  if (idle !== undefined) return line('noSuchElement', idle);
  const isPresent = alwaysThere.has(demand.element) || present.has(demand.element);
  if (!isPresent)
    return line(
      'noSuchElement',
      `No part is named as one of: ${elementName.get(demand.element)}. If there is one, this applies`,
    );
  // The rule of the general demand held its own figures against the machine, not those of this case.
  const general = demand.limits.length === 0 ? demand.specialises : undefined;
  const rule =
    rules.find((r) => r.settles.includes(demand.id)) ?? rules.find((r) => r.settles.includes(general ?? ''));
  const measures = demand.evidence.filter((e) => e.by === 'measure');
  const open = demand.evidence.filter((e) => e.by !== 'measure');
  const missing = measures.filter((e) => !isComputed(scene, e.measure));
  const candidates = candidatesFor(scene, demand);
  if (rule && measures.some((e) => e.strength === 'decides' && isComputed(scene, e.measure))) {
    return missing.length + open.length === 0 || measures.every((e) => e.strength === 'decides')
      ? line('met', `Computed: ${rule.basis}`)
      : line(
          'notShown',
          `Computed without a finding: ${rule.basis}. Still ${howToShow([...open, ...missing])}`,
        );
  }
  if (rule && measures.some((e) => isComputed(scene, e.measure)))
    return line(
      'notShown',
      `No candidate found: ${rule.basis}. Still ${howToShow(open.length > 0 ? open : missing)}${candidates}`,
    );
  return line('notShown', `To be shown: ${howToShow([...open, ...missing])}${candidates}`);
}

/** Whether a finding's requirement is the asked one or a case of it. */
function isCaseOf(scene: Scene, found: string, asked: string): boolean {
  for (let id: string | undefined = found; id !== undefined; id = scene.demands.get(id)?.specialises)
    if (id === asked) return true;
  return false;
}

/**
 * A case without a rule of its own is judged by the general requirement: a finding there tells on it when it stands
 * on a part of its element.
 */
function tellsOn(scene: Scene, f: Finding, demand: Demand, rules: readonly RuleResult[]): boolean {
  if (demand.specialises !== f.requirement || rules.some((r) => r.settles.includes(demand.id))) return false;
  return f.parts.some((id) => scene.known.is[scene.known.indexOf.get(id)!]?.element === demand.element);
}

const measureWords: Record<MeasureKey, string> = {
  standingLiquid: 'standing liquid',
  flatFaces: 'flat faces',
  insideCorners: 'inside corners',
  narrowGaps: 'narrow gaps',
  hollows: 'hollows',
  fasteners: 'fasteners and threads',
  handReach: 'hand reach',
  toolReach: 'tool reach',
  jetReach: 'jet reach',
  openSky: 'open sky',
  overhead: 'what hangs overhead',
  clearances: 'clearances',
};

const ways: Record<Exclude<Evidence['by'], 'measure'>, string> = {
  calculation: 'by calculation',
  hand: 'by measuring on the machine',
  inspection: 'by looking at the machine',
  documents: 'from documents',
};

function howToShow(evidence: readonly Evidence[]): string {
  const words = evidence.map((e) =>
    e.by === 'measure' ? `by the measure of ${measureWords[e.measure]}, not measured` : ways[e.by],
  );
  return words.length === 0 ? 'by looking at the machine' : [...new Set(words)].join(', ');
}

/** Names are hints: they say where to look, and make no finding. */
function candidatesFor(scene: Scene, demand: Demand): string {
  const asksForScrews = demand.evidence.some((e) => e.by === 'measure' && e.measure === 'fasteners');
  if (asksForScrews) return unjudgedFasteners(scene);
  if (demand.id === 'pipe-dead') return namedParts(scene, 'blank', 'caps of closed branches');
  return '';
}

/** Where fasteners were measured, those whose kind geometry could not tell; else all that are named so. */
function unjudgedFasteners(scene: Scene): string {
  const { fasteners } = scene.survey.measures;
  if (!fasteners) return namedParts(scene, 'fastener', 'screws or nuts');
  const open = fasteners.heads.filter((h) => h.kind === 'unknown' || h.from === 'name');
  const parts = [...new Set(open.flatMap((h) => h.parts))].flatMap((id) => scene.known.indexOf.get(id) ?? []);
  if (parts.length === 0) return '';
  const names = [...new Set(parts.map((p) => theName(scene.known.model.parts[p].name)))];
  return `. Look at ${parts.length === 1 ? '1 fastener' : `${parts.length} fasteners`} of a kind that the model does not tell: ${some(names, 4)}`;
}

function namedParts(scene: Scene, noun: Noun, like: string): string {
  const named = scene.known.model.parts.filter(
    (_, p) => scene.known.is[p]?.noun === noun && scene.known.is[p].from === 'name',
  );
  if (named.length === 0) return `. No part is named like ${like}`;
  const names = [...new Set(named.map((p) => theName(p.name)))];
  const parts = named.length === 1 ? '1 part that is' : `${named.length} parts that are`;
  return `. Look at ${parts} named like ${like}: ${some(names, 4)}`;
}
