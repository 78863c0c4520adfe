import { type Catalogue, elements } from '@coveline/catalogue';
import { type Coverage, type Finding, type ReviewResult, traceOf } from '@coveline/review';
import type { FileContent, RequirementContent } from './content.ts';
import type { Printer } from './printable.ts';
import { counted, kindWords, standingWords, statusWords } from './words.ts';

type Cited = Finding['demand']['citations'][number];

/** A source with its clause, its kind and how far it was seen; a key that the catalogue lacks is shown as it is. */
export function sourceLine({ source, clause, standing }: Cited, { sources }: Catalogue): string {
  const known = sources.get(source);
  const title = known ? known.title : source;
  const kind = known ? kindWords[known.kind] : '';
  return [title, clause, kind, standingWords[standing]].filter(Boolean).join(', ');
}

/** Every requirement of the review with its status, by machine element. */
export function requirementsContent(
  review: ReviewResult,
  { requirements, sources }: Catalogue,
  { text }: Printer,
): Pick<FileContent, 'requirements' | 'requirementsSummary' | 'coverage'> {
  const numberOf = new Map(review.findings.map((f, i) => [f.id, i + 1]));
  const rows = new Map<string, RequirementContent[]>();
  for (const status of review.requirements) {
    const known = requirements.get(status.requirement);
    const element = elements.find((e) => e.id === known?.element)?.name ?? 'Other';
    const row: RequirementContent = {
      text: text(known?.text ?? status.requirement),
      status: statusWords[status.status],
      basis: text(status.basis),
      source: text(
        known
          ? `${kindWords[known.kind]}: ${known.citations.map((c) => [sources.get(c.source)?.key ?? c.source, c.clause].filter(Boolean).join(' ')).join('; ')}`
          : 'not in the catalogue',
      ),
      findings: status.findings.flatMap((id) => numberOf.get(id) ?? []),
    };
    rows.set(element, [...(rows.get(element) ?? []), row]);
  }
  const count = (s: keyof typeof statusWords): number =>
    review.requirements.filter((r) => r.status === s).length;
  const { coverage } = traceOf(review, {});
  return {
    coverage: coverageRows.map(([key, label]) => ({ label, value: String(coverage[key]) })),
    requirements: [...rows].map(([element, list]) => ({ element: text(element), rows: list })),
    requirementsSummary: `${counted(review.requirements.length, 'requirement')}: ${count('notMet')} not met, ${count('notShown')} not shown, ${count('met')} met as far as was computed, ${count('noSuchElement')} about elements that this machine does not have.`,
  };
}

const coverageRows: readonly (readonly [keyof Coverage, string])[] = [
  ['computed', 'computed by a measure'],
  ['looked', 'looked at on the round'],
  ['notLookedAt', 'not looked at or not shown yet'],
  ['noSuchElement', 'about something that this machine does not have'],
];

/** Sources that findings or requirements of this file rest on. */
export function sourcesContent(
  review: ReviewResult,
  { requirements, sources }: Catalogue,
  { text }: Printer,
): FileContent['sources'] {
  const keys = new Set<string>();
  for (const finding of review.findings) for (const c of finding.demand.citations) keys.add(c.source);
  for (const { requirement } of review.requirements)
    for (const c of requirements.get(requirement)?.citations ?? []) keys.add(c.source);
  return [...keys].sort().flatMap((key) => {
    const source = sources.get(key);
    if (!source) return [];
    return [
      {
        title: text(`${key}: ${source.title}`),
        edition: text(source.edition),
        kind: kindWords[source.kind],
        seen: text(source.seen),
      },
    ];
  });
}
