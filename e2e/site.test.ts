import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { breachesOn } from './breaches.ts';
import { openBrowser, openPage } from './browser.ts';

const url = inject('url');
const machine = inject('machine');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('the site is proposed, accepted, changed, added to and taken back by keyboard', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'dark', width: 1024, height: 768 });
  const { keyboard } = page;
  // The words of the top bar, so that a refusal is told by the server's own sentence.
  const kept = () =>
    expect
      .poll(() => page.locator('.top-state').textContent(), { timeout: 60_000 })
      .toMatch(/all changes kept/);
  await page.goto(`${url}/machine/${machine}/B/site`);
  // The model and its drawings come in behind the page and keep it busy on a machine without a graphics card.
  await page.waitForLoadState('networkidle', { timeout: 120_000 });
  const back = page.getByRole('article', { name: 'back', exact: true });
  await back.getByText('proposed · a guess · does not hold until it is accepted').waitFor();
  await back.getByRole('button', { name: /^Accept/ }).focus();
  await keyboard.press('Enter');
  await back.getByText('accepted · a guess').waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('ARTICLE');
  await page.getByText('The survey went by another site than this one.').waitFor();
  await kept();

  const filter = page.getByRole('article', { name: /^filter H14/ });
  await filter.getByText('Numbers and parts').focus();
  await keyboard.press('Enter');
  // A field inside of closed details takes no focus, and the words would go to the summary.
  await filter.getByLabel('Speed of the air').waitFor();
  await filter.getByLabel('Speed of the air').focus();
  await keyboard.type('36 cm/s');
  await filter.getByText('understood: 36 cm/s = 0.36 m/s').waitFor();
  await keyboard.press('Enter');
  await filter.getByText('changed · sure').waitFor();
  await filter.getByText(/Speed of the air 0\.36 m\/s/).waitFor();
  await kept();
  await filter.getByRole('button', { name: /^Back to the proposal/ }).focus();
  await keyboard.press('Enter');
  await filter.getByText('proposed · sure').waitFor();

  await page.getByRole('button', { name: 'Add', exact: true }).focus();
  await keyboard.press('Enter');
  const added = page.getByRole('article', { name: 'nozzle, added by hand' });
  await added.getByLabel('Full angle of the cone').fill('45');
  await added.getByLabel('Full angle of the cone').press('Enter');
  await added.getByText(/Full angle of the cone 45/).waitFor();
  expect(await breachesOn(page)).toEqual([]);
  await added.getByRole('button', { name: /^Remove: nozzle/ }).focus();
  await keyboard.press('Enter');
  await added.waitFor({ state: 'detached' });
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
  await kept();

  await back.getByRole('button', { name: /^Back to the proposal/ }).focus();
  await keyboard.press('Enter');
  await back.getByText('proposed · a guess').waitFor();
  await kept();
  expect(faults).toEqual([]);
  await close();
});
