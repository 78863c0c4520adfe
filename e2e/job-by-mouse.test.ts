import type { Browser } from 'playwright-core';
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

test('the whole job by mouse', async () => {
  const finding = await firstFinding(url, machine, 'A');
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1440, height: 900 });

  await page.goto(url);
  await page.getByRole('link', { name: 'Revision A' }).click();
  await page.getByRole('row', { name: finding.title }).click();
  await expect.poll(() => page.url()).toContain(encodeURIComponent(finding.id));
  const slip = page.getByRole('article', { name: finding.title });
  await slip.waitFor();

  // The camera has walked to the finding.
  const height = page.getByRole('slider', { name: 'Height of the view above the floor' });
  await expect
    .poll(async () => Math.abs(Number(await height.getAttribute('aria-valuenow')) - finding.height_mm))
    .toBeLessThan(60);

  const number = slip.getByRole('button', { name: finding.numbers[0].label });
  await number.click();
  await slip.getByText(finding.numbers[0].working.formula[0]).waitFor();
  expect(await number.getAttribute('aria-expanded')).toBe('true');

  await slip.getByRole('button', { name: 'Keep as concession' }).click();
  await slip.getByRole('button', { name: 'Keep this decision' }).click();
  await slip.getByText('Fill in “Reason”.').waitFor();
  await slip.getByLabel('Reason').fill('The plate must be level to guide the jars.');
  await slip.getByText('function', { exact: true }).click();
  await slip.getByLabel('What is done').fill('Wipe dry and look');
  await slip.getByLabel('How often').fill('after each cleaning');
  await slip.getByLabel('Who does it').fill('operator');
  await slip.getByLabel('Granted by').fill('quality manager');
  await slip.getByLabel('Until').fill('2027-06-30');
  await slip.getByRole('button', { name: 'Keep this decision' }).click();
  await slip.getByText('Kept as concession', { exact: true }).waitFor();
  await page.locator('[data-kept=true]').waitFor();

  await page.reload();
  await slip.getByText('Kept as concession', { exact: true }).waitFor();
  await slip.getByText('Wipe dry and look · after each cleaning · operator').waitFor();

  await page.getByRole('button', { name: /^Undo:/ }).click();
  await slip.getByRole('button', { name: 'Keep as concession' }).waitFor();
  await page.getByRole('button', { name: /^Redo:/ }).click();
  await slip.getByText('Kept as concession', { exact: true }).waitFor();
  await page.screenshot({ path: 'e2e/out/decided.png' });

  await page.getByRole('link', { name: 'File' }).click();
  await page.getByRole('button', { name: /Make (the file|it again)/ }).click();
  const open = page.getByRole('link', { name: 'Open the file' });
  await open.waitFor({ timeout: 200_000 });
  const pdf = await page.request.get(new URL((await open.getAttribute('href')) ?? '', url).href);
  expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-');

  expect(faults).toEqual([]);
  await close();
});

test('a part is overruled for the revision, and the proposal comes back', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1440, height: 900 });
  await page.goto(`${url}/machine/${machine}/A/model`);
  await page.getByLabel('Filter by name').fill('guide plate');
  await page.getByRole('row', { name: /guide plate/ }).click();
  const editor = page.getByRole('region', { name: 'Set for the chosen parts' });
  await editor.getByLabel('Roughness Ra').fill('0,6 µm');
  await editor.getByText('understood: 0.6 µm').waitFor();
  await editor.getByLabel('Roughness Ra').press('Enter');
  await page.getByRole('gridcell', { name: '0.6 µm' }).waitFor();
  await editor.getByRole('button', { name: 'Back to the proposals' }).click();
  await page.getByRole('gridcell', { name: '0.6 µm' }).waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
  await close();
});

test('a change that the server refuses goes back, and the reason is shown', async () => {
  const finding = await firstFinding(url, machine, 'A');
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1440, height: 900 });
  await page.route('**/commands', (route) =>
    route.fulfill({ status: 409, json: { message: 'The data folder is full: make room.', code: 'full' } }),
  );
  await page.goto(`${url}/machine/${machine}/A/walk/${encodeURIComponent(finding.id)}`);
  await page.getByRole('button', { name: 'Does not apply' }).click();
  await page.getByLabel('Why the demand does not apply here').fill('No liquid comes here.');
  await page.getByRole('button', { name: 'Keep this decision' }).click();
  await page.getByRole('alert').getByText('The data folder is full: make room.').waitFor();
  await page.getByRole('button', { name: 'Keep as concession' }).waitFor();
  await close();
});

test('a view at rest draws no frames', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.addInitScript(() => {
    const counted = window as unknown as { asked: number };
    counted.asked = 0;
    const ask = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (run) => {
      counted.asked++;
      return ask(run);
    };
  });
  const asked = () => page.evaluate(() => (window as unknown as { asked: number }).asked);
  await page.goto(`${url}/machine/${machine}/A/walk`);
  await page.getByRole('toolbar', { name: 'View' }).waitFor();
  await page.waitForTimeout(2500);
  const before = await asked();
  expect(before).toBeGreaterThan(0);
  await page.waitForTimeout(1500);
  expect(await asked()).toBe(before);
  await close();
});
