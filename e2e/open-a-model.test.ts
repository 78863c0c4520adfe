import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, openPage } from './browser.ts';

const url = inject('url');
const model = fileURLToPath(
  new URL('../examples/porridge-doser/out/project/porridge-doser-A.step', import.meta.url),
);
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

test('a model is opened; its progress survives a reload, and it can be cancelled and begun again', async () => {
  const { page, faults, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.goto(url);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a model …' }).click();
  await (await chooser).setFiles(model);
  const dialog = page.getByRole('dialog', { name: 'Open a model' });
  await dialog.getByLabel('Name of the machine').fill('Test bench (invented)');
  await dialog.getByLabel('Revision').fill('first');
  await dialog.getByRole('button', { name: 'Open', exact: true }).click();

  const progress = page.getByRole('progressbar', { name: 'Reading and measuring the model' });
  await progress.waitFor();
  expect(page.url()).toMatch(/\/model$/);
  await page.reload();
  await progress.waitFor();
  await page.screenshot({ path: 'e2e/out/job.png' });

  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByText('Reading and measuring the model was cancelled.').first().waitFor();
  await page.getByRole('button', { name: 'Measure again' }).click();
  await progress.waitFor();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByText('Reading and measuring the model was cancelled.').first().waitFor();
  expect(faults).toEqual([]);
  await close();
});

test('a file that is no model gets one sentence', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.goto(url);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a model …' }).click();
  await (await chooser).setFiles({
    name: 'broken.stl',
    mimeType: 'model/stl',
    buffer: Buffer.from('no model'),
  });
  const dialog = page.getByRole('dialog', { name: 'Open a model' });
  await dialog.getByRole('button', { name: 'Open', exact: true }).click();
  const sentence = page.getByText(/Reading and measuring the model failed\. .+/).first();
  await sentence.waitFor({ timeout: 60_000 });
  expect((await sentence.textContent())?.length).toBeGreaterThan(60);
  await close();
});
