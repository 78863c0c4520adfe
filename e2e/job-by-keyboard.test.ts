import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, openPage } from './browser.ts';
import { firstFinding } from './first-finding.ts';

const url = inject('url');
const machine = inject('machine');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/**
 * Presses Tab until the focus is on something with this name or text. Fails after 60 steps. The page itself has the
 * text of everything on it, so it does not count.
 */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  for (let step = 0; step < 60; step++) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() => {
      const focused = document.activeElement as HTMLElement | null;
      if (!focused || focused.matches('body, main, [tabindex="-1"]')) return '';
      const labels = (focused as HTMLInputElement | null)?.labels;
      return [focused.getAttribute('aria-label'), labels?.[0]?.textContent, focused.textContent].join(' ');
    });
    if (wanted.test(here)) return;
  }
  throw new Error(`Tab never came to ${wanted}`);
}

test('the whole job by keyboard alone', async () => {
  const finding = await firstFinding(url, machine, 'B');
  const { page, faults, close } = await openPage(browser, { sheet: 'dark', width: 1440, height: 900 });
  const { keyboard } = page;

  await page.goto(url);
  await page.getByRole('link', { name: 'Revision B' }).waitFor();
  await tabTo(page, /^ *Revision B/);
  await keyboard.press('Enter');
  const row = page.getByRole('row', { name: finding.title });
  await row.waitFor();
  await page.getByRole('toolbar', { name: 'View' }).waitFor();

  // The view itself takes keys.
  await tabTo(page, /The machine in 3D/);
  await keyboard.press('ArrowLeft');
  await keyboard.press('+');

  await tabTo(page, new RegExp(finding.title.slice(0, 20).replace(/[()]/g, '.')));
  await keyboard.press('Enter');
  const title = page.getByRole('heading', { name: finding.title });
  await title.waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('slip-title');
  const height = page.getByRole('slider', { name: 'Height of the view above the floor' });
  await expect
    .poll(async () => Math.abs(Number(await height.getAttribute('aria-valuenow')) - finding.height_mm))
    .toBeLessThan(60);

  await tabTo(page, new RegExp(finding.numbers[0].label));
  await keyboard.press('Enter');
  await page.getByText(finding.numbers[0].working.formula[0]).waitFor();

  await tabTo(page, /Keep as concession/);
  await keyboard.press('Enter');
  await keyboard.type('Needed for the function.');
  await tabTo(page, /What is done/);
  await keyboard.type('Wipe dry');
  await tabTo(page, /Granted by/);
  await keyboard.type('quality manager');
  await tabTo(page, /Until/);
  await keyboard.type('06302027');
  await tabTo(page, /Keep this decision/);
  await keyboard.press('Enter');
  await page.getByText('Kept as concession', { exact: true }).waitFor();
  await page.locator('[data-kept=true]').waitFor();

  await page.reload();
  await page.getByText('Kept as concession', { exact: true }).waitFor();
  await keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Keep as concession' }).waitFor();
  await keyboard.press('Control+Shift+z');
  await page.getByText('Kept as concession', { exact: true }).waitFor();

  // Back to the list: the focus is where it was left.
  await keyboard.press('l');
  await row.waitFor();
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-key')))
    .toBe(finding.id);

  await keyboard.press('Control+k');
  await page.getByRole('dialog', { name: 'Find or do' }).waitFor();
  await keyboard.type('File');
  await keyboard.press('Enter');
  await page.getByRole('heading', { name: 'File' }).waitFor();
  await tabTo(page, /Make (the file|it again)/);
  await keyboard.press('Enter');
  await page.getByRole('link', { name: 'Open the file' }).waitFor({ timeout: 200_000 });
  expect(faults).toEqual([]);
  await close();
});

test('help opens with ? and gives the focus back; single keys can be turned off', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.goto(`${url}/machine/${machine}/A/walk`);
  await page.getByRole('toolbar', { name: 'View' }).waitFor();
  await tabTo(page, /Help and settings/);
  await page.keyboard.press('Enter');
  const help = page.getByRole('dialog', { name: 'Help and settings' });
  await help.waitFor();
  await page.keyboard.press('Escape');
  await help.waitFor({ state: 'detached' });
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
    .toBe('Help and settings');

  await page.keyboard.press('?');
  await help.getByText('Single-key shortcuts').click();
  await page.keyboard.press('Escape');
  await help.waitFor({ state: 'detached' });
  await page.keyboard.press('?');
  await page.waitForTimeout(400);
  expect(await help.count()).toBe(0);
  await close();
});
