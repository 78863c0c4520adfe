import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const demands = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What on a page breaches WCAG 2.2 AA, as far as axe knows. */
export async function breachesOn(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const results = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run: (o: object) => Promise<AxeResults> } }).axe.run({ runOnly: tags }),
    demands,
  );
  return results.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)}`));
}
