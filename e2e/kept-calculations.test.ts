import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { breachesOn } from './breaches.ts';
import { openBrowser, openPage } from './browser.ts';
import { pdfWords } from './pdf-words.ts';

const url = inject('url');
const machine = inject('machine');
/** A title of its own for each run, as a server that runs already may hold that of an earlier one. */
const title = `Branch at the pump ${Date.now()} (invented)`;
const listed = `${url}/machine/${machine}/A/calculations`;
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a calculation is kept with a machine by keyboard, changed, and printed in the file', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1440, height: 900 });
  const { keyboard } = page;
  await page.goto(`${url}/calculations/dead-leg-ratio?rule=industry&length=7.8+cm&branch=26+mm&main=50+mm`);
  const answer = page.getByRole('region', { name: 'Result' });
  // 78 mm over 26 mm.
  await answer.getByText('3', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'Keep with a machine …' }).focus();
  await keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Keep with a machine' });
  // The only machine is chosen by itself when the machines are known.
  await dialog.getByRole('button', { name: /Porridge doser/ }).waitFor();
  await dialog.getByLabel('Title').fill(title);
  await dialog.getByLabel('Title').press('Enter');
  await page.getByText('Kept with').waitFor();
  await page.getByRole('link', { name: 'Porridge doser (invented)' }).focus();
  await keyboard.press('Enter');

  const item = page.getByRole('article', { name: title });
  const number = item.locator('.kept-number');
  await expect.poll(() => number.textContent()).toBe('3');
  await item.getByText('7.8 cm').waitFor();
  await item.getByRole('link', { name: /^Open in the calculator/ }).focus();
  await keyboard.press('Enter');
  await page.getByText('These values are kept.').waitFor();
  await page.getByLabel(/^Length from the inner wall/).fill('52 mm');
  await answer.getByText('2', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'Keep these values' }).focus();
  await keyboard.press('Enter');
  await page.getByText('These values are kept.').waitFor();

  await page.goto(listed);
  await expect.poll(() => number.textContent()).toBe('2');
  const mark = (await item.getByRole('heading').textContent())?.trim();
  expect(mark).toMatch(/^K\d+ Branch at the pump \d+ \(invented\)$/);
  await page.goto(`${url}/machine/${machine}/A/file`);
  await page.getByRole('button', { name: /^Make/ }).click();
  await page.getByRole('progressbar', { name: 'Making the file' }).waitFor();
  await page
    .getByRole('progressbar', { name: 'Making the file' })
    .waitFor({ state: 'detached', timeout: 250_000 });
  const address = await page.getByRole('link', { name: 'Open the file' }).getAttribute('href');
  const pdf = Buffer.from(await (await fetch(new URL(address!, url))).arrayBuffer());
  expect(pdfWords(pdf)).toContain(mark);

  // Removed, and the page says so; undo brings it back to its place.
  await page.goto(listed);
  await item.getByRole('button', { name: /^Remove/ }).focus();
  await keyboard.press('Enter');
  await item.waitFor({ state: 'detached' });
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
  await page.locator('[data-kept=true]').waitFor();
  await page.getByRole('button', { name: /^Undo: Remove the calculation/ }).click();
  await item.waitFor();
  await item.getByRole('button', { name: /^Remove/ }).click();
  await item.waitFor({ state: 'detached' });
  await page.locator('[data-kept=true]').waitFor();
  expect(faults).toEqual([]);
  await close();
});

test('what gives no number keeps what was typed and one sentence; a changed result is flagged', async () => {
  const send = (calculation: string, kept: object | null) =>
    fetch(`${url}/api/machines/${machine}/commands`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ do: 'setCalculation', calculation, kept }),
    });
  const drying = { calculation: 'drying-time', title: 'Wrong unit', inputs: { depth: '2 kg' } };
  await send('e2e-wrong', drying);
  const gave = { value: 1, unit: 'h' };
  await send('e2e-old', { ...drying, title: 'Old result', inputs: { depth: '2 mm' }, gave });
  const { page, close } = await openPage(browser, { sheet: 'dark', width: 1024, height: 768 });
  await page.goto(listed);
  const wrong = page.getByRole('article', { name: /Wrong unit/ });
  await wrong.getByText('No number. Depth of the water: "2 kg" is a mass: expected a length').waitFor();
  await wrong.getByText('2 kg', { exact: true }).waitFor();
  const old = page.getByRole('article', { name: /Old result/ });
  await old.getByText(/^Changed: it gave 1 h when it was kept, and gives \d+/).waitFor();
  await page.screenshot({ path: 'e2e/out/kept-calculations.png' });
  expect(await breachesOn(page)).toEqual([]);
  await old.getByRole('button', { name: 'Take over the new result' }).click();
  await old.getByText(/^Changed: /).waitFor({ state: 'detached' });
  for (const id of ['e2e-wrong', 'e2e-old']) expect((await send(id, null)).status).toBe(200);
  await close();
});
