import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { breachesOn } from './breaches.ts';
import { openBrowser, openPage } from './browser.ts';
import { firstFinding } from './first-finding.ts';

const url = inject('url');
const machine = inject('machine');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const pages = [
  'start',
  'walk',
  'slip',
  'model',
  'brief',
  'requirements',
  'round',
  'revisions',
  'history',
  'calculations',
  'site',
  'cleaning',
  'air',
  'proof',
  'file',
] as const;
const looks = [
  { sheet: 'light', width: 1440, height: 900 },
  { sheet: 'dark', width: 1024, height: 768 },
] as const;

async function addressOf(page: (typeof pages)[number]): Promise<string> {
  const machinePage = `${url}/machine/${machine}/A`;
  if (page === 'start') return url;
  if (page !== 'slip') return `${machinePage}/${page}`;
  const finding = await firstFinding(url, machine, 'A');
  return `${machinePage}/walk/${encodeURIComponent(finding.id)}`;
}

for (const look of looks) {
  test.each(pages)(
    `%s, ${look.sheet} sheet at ${look.width}: no breach of WCAG 2.2 AA that axe knows`,
    async (name) => {
      const { page, faults, close } = await openPage(browser, look);
      await page.goto(await addressOf(name));
      await page.getByRole('heading', { level: 1 }).first().waitFor({ state: 'attached' });
      await page.waitForLoadState('networkidle');
      if (name === 'walk' || name === 'slip' || name === 'model')
        await page.getByRole('toolbar', { name: 'View' }).waitFor();
      await page.screenshot({ path: `e2e/out/${name}-${look.width}-${look.sheet}.png` });
      expect(await breachesOn(page)).toEqual([]);
      expect(faults).toEqual([]);
      await close();
    },
  );
}

test('at 200 % zoom the words stand below the picture and nothing runs off sideways', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 720, height: 450 });
  await page.goto(await addressOf('slip'));
  await page.getByRole('heading', { level: 1 }).waitFor();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await page.screenshot({ path: 'e2e/out/slip-200-percent.png', fullPage: true });
  await close();
});
