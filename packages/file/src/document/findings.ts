import { setImmediate } from 'node:timers/promises';
import type { Catalogue } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { Finding } from '@coveline/review';
import type { FileControl, FileRequest } from '../request.ts';
import type { FindingContent, GroupContent, Picture } from './content.ts';
import { decisionContent } from './decisions.ts';
import { drawFinding } from './finding-pictures.ts';
import type { Printer } from './printable.ts';
import { sourceLine } from './requirements.ts';
import type { Scene } from './scene.ts';
import { areaWords, costWords, measureWords, rankWords, signOf } from './words.ts';
import type { WorkingBook } from './workings.ts';

/** Names listed with a finding before the rest is counted. */
const mostParts = 12;

/** Findings by rank, in the order of the review. `keep` stores a picture and returns the name of its file. */
export async function findingsContent(
  { review, decisions }: FileRequest,
  catalogue: Catalogue,
  scene: Scene,
  printer: Printer,
  book: WorkingBook,
  keep: (name: string, png: Uint8Array) => string,
  { signal, onProgress }: FileControl,
): Promise<GroupContent[]> {
  const groups: { title: string; findings: FindingContent[] }[] = [];
  for (const [i, finding] of review.findings.entries()) {
    const count = review.findings.length;
    if (signal?.aborted) throw new Error(`The file was stopped at finding ${i + 1} of ${count}.`);
    onProgress?.(`Drawing finding ${i + 1} of ${count}`, (0.95 * i) / count);
    // Lets a signal arrive.
    await setImmediate();
    const title = rankWords[finding.consequence.rank];
    if (groups.at(-1)?.title !== title) groups.push({ title, findings: [] });
    groups.at(-1)?.findings.push(content(finding, i + 1));
  }
  return groups;

  function content(finding: Finding, number: number): FindingContent {
    const { text, short } = printer;
    return {
      number,
      sign: signOf(finding.measure),
      title: text(finding.title),
      place: text(
        [
          finding.measure ? measureWords[finding.measure] : 'to be answered by hand',
          areaWords[finding.areaClass],
          `${Math.round(finding.height_mm)} mm above the floor`,
        ].join(' · '),
      ),
      status: finding.status === 'notMet' ? 'not met' : 'not shown to be met',
      ...pictures(finding, number),
      numbers: finding.numbers.map((n) => ({
        label: text(n.label),
        value: text(formatQuantity(n.value, n.unit, { digits: 3 })),
        working: book.numberOf(n.working, number),
      })),
      why: text(finding.why),
      order: text(finding.consequence.reason),
      demand: text(finding.demand.text),
      limit: text(finding.demand.limit),
      sources: finding.demand.citations.map((c) => text(sourceLine(c, catalogue))),
      remedies: finding.remedies.map((r) => ({ text: text(r.text), cost: costWords[r.cost] })),
      conflict: finding.conflict
        ? [
            { label: 'Why people keep it', value: text(finding.conflict.reason) },
            { label: 'What then controls it', value: text(finding.conflict.control) },
          ]
        : [],
      caveats: finding.caveats.map(text),
      parts: partsInWords(finding, short),
      decision: decisionContent(decisions[finding.id], printer),
    };
  }

  function pictures(finding: Finding, number: number): { close: Picture; overview: Picture } {
    const drawn = drawFinding(scene, finding);
    const count = finding.places.length;
    const which = count > drawn.shown ? `The close-up shows ${drawn.shown} of ${count} places.` : '';
    const caption = [drawn.cutOpen ? 'What is in front is cut away.' : '', which].filter(Boolean).join(' ');
    return {
      close: {
        file: keep(`finding-${number}.png`, drawn.close),
        alt: printer.text(`Close-up of finding ${number}: ${finding.title}. ${caption}`.trim()),
        caption,
      },
      overview: {
        file: keep(`finding-${number}-where.png`, drawn.overview),
        alt: `The whole machine with a dot at finding ${number}, ${Math.round(finding.height_mm)} mm above the floor.`,
        caption: '',
      },
    };
  }
}

function partsInWords(finding: Finding, short: Printer['short']): string {
  const names = finding.parts.map((id) => id.split('/').at(-1) as string);
  const listed = names.slice(0, mostParts).map((name) => short(name, 80));
  const rest = names.length - listed.length;
  return rest > 0 ? `${listed.join(', ')} and ${rest} more` : listed.join(', ');
}
