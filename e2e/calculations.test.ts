import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { breachesOn } from './breaches.ts';
import { openBrowser, openPage } from './browser.ts';

const url = inject('url');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a calculation is found and filled in by keyboard, and a reload keeps what was typed', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1440, height: 900 });
  const { keyboard } = page;
  await page.goto(url);
  await page.getByRole('link', { name: 'Calculations' }).focus();
  await keyboard.press('Enter');
  await page.getByText('107 calculations').waitFor();
  await keyboard.type('water pipe given flow');
  await page.getByText('2 calculations', { exact: true }).waitFor();
  await keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /Water in a pipe at a given flow/ }).waitFor();

  const answer = page.getByRole('region', { name: 'Result' });
  await answer.getByText('Fill in the fields').waitFor();
  await page.getByLabel(/^Bore/).focus();
  await keyboard.type('2 in');
  await page.getByText('understood: 2 in = 50.8 mm').waitFor();
  await answer.getByText('Give the flow in m³/h or another unit of its kind.').waitFor();
  await page.getByLabel(/^Flow/).focus();
  await keyboard.type('44 gpm');
  // 44 US gal/min is 9.99349 m3/h; through a bore of 50.8 mm that is 1.3696 m/s.
  const speed = page.getByRole('row', { name: /mean speed/ });
  await speed.getByText('1.37 m/s').waitFor();
  const first = await answer.textContent();
  expect(first).toMatch(/Wall shear.*Pa/);

  await expect.poll(() => page.url()).toContain('?bore=2+in&flow=44+gpm');
  await page.reload();
  await speed.getByText('1.37 m/s').waitFor();
  expect(await page.getByLabel(/^Bore/).inputValue()).toBe('2 in');
  expect(await answer.textContent()).toBe(first);
  expect(faults).toEqual([]);
  await close();
});

test('a wrong unit and a value out of range get one sentence', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.goto(`${url}/calculations/pipe-flow?bore=2+kg&flow=3`);
  const answer = page.getByRole('region', { name: 'Result' });
  const bore = page.getByLabel(/^Bore/);
  await answer.getByText('Bore: "2 kg" is a mass: expected a length, such as 50.8 mm').waitFor();
  expect(await bore.getAttribute('aria-invalid')).toBe('true');
  await bore.fill('2 km');
  await answer.getByText('Bore is 2,000,000 mm, expected from 1 mm to 1,000 mm.').waitFor();
  await page.goto(`${url}/calculations/teapot`);
  await page.getByText('There is no calculation “teapot”.').waitFor();
  await close();
});

test('the worked example fills the fields, and the result is copied in the words of the command line', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`${url}/calculations/chart-ewma`);
  await page.getByRole('button', { name: 'Use the worked example' }).click();
  await page.getByRole('img', { name: /^Chart of Chart: result, average/ }).waitFor();
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await page.getByText('copied as text').waitFor();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(text).toContain('understood values: 10 values, 1.1 to 1.9');
  expect(text).toContain('Source: S. W. Roberts');
  await page.getByRole('button', { name: 'Empty the fields' }).click();
  await expect.poll(() => new URL(page.url()).search).toBe('');
  expect(faults).toEqual([]);
  await close();
});

test('a logger file of a million samples never holds up the page', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  const rows = Array.from({ length: 1_000_000 }, (_, i) => `${i},${i < 600 ? 100 : 121.1}`);
  const folder = mkdtempSync(join(tmpdir(), 'coveline-logger-'));
  const file = join(folder, 'retort.csv');
  writeFileSync(file, `time s,cold spot degC\n${rows.join('\n')}\n`);
  await page.goto(`${url}/calculations/lethality-of-logger-file`);
  const answer = page.getByRole('region', { name: 'Result' });
  await answer.getByText('Fill in the fields').waitFor();
  await page.evaluate(() => {
    const seen = window as unknown as { longest: number };
    seen.longest = 0;
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) seen.longest = Math.max(seen.longest, task.duration);
    }).observe({ entryTypes: ['longtask'] });
  });
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Choose a file …' }).click();
  await (await chooser).setFiles(file);
  await page.getByText(/retort\.csv, 1\d\.\d MB/).waitFor();
  // 999 400 s at the reference temperature are 16 657 min; the start at 100 degC adds next to nothing.
  await answer.getByText('16,660 min').waitFor({ timeout: 30_000 });
  await page.getByText('Too long for the address of this page: Logger file.').waitFor();
  const longest = await page.evaluate(() => (window as unknown as { longest: number }).longest);
  expect(longest).toBeLessThan(500);

  rmSync(folder, { recursive: true });
  await page.getByLabel(/^Temperature difference/).fill('12 K');
  await answer.getByText('retort.csv cannot be read any more. Choose it again.').waitFor();
  expect(faults).toEqual([]);
  await close();
});

const looks = [
  { sheet: 'light', width: 1440, height: 900 },
  { sheet: 'dark', width: 1024, height: 768 },
] as const;
const pages = ['', 'drying-time', 'lethality-of-logger-file', 'cleaning-circuit', 'chart-ewma'];

for (const look of looks)
  test.each(pages)(
    `/calculations/%s, ${look.sheet} sheet at ${look.width}: no breach of WCAG 2.2 AA`,
    async (name) => {
      const { page, close } = await openPage(browser, look);
      await page.goto(`${url}/calculations/${name}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      if (name !== '') {
        await page.getByRole('button', { name: 'Use the worked example' }).click();
        await page.getByRole('button', { name: 'Copy as text' }).waitFor();
      }
      await page.screenshot({
        path: `e2e/out/calculations-${name || 'list'}-${look.width}-${look.sheet}.png`,
      });
      expect(await breachesOn(page)).toEqual([]);
      await close();
    },
  );

test.each(['', 'drying-time?depth=2+kg', 'cleaning-circuit'])(
  'at 200 % zoom /calculations/%s does not run off sideways',
  async (path) => {
    const { page, close } = await openPage(browser, { sheet: 'light', width: 720, height: 450 });
    await page.goto(`${url}/calculations/${path}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(wide).toBeLessThanOrEqual(0);
    await close();
  },
);
