import type { Machine } from '@coveline/api';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, openPage } from './browser.ts';

const url = inject('url');
const machine = inject('machine');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const answers = async () => {
  const held = (await (await fetch(`${url}/api/machines/${machine}`)).json()) as Machine;
  return held.project.answers.A ?? {};
};

test('what is answered without a connection waits, survives a reload, and is sent when the server answers', async () => {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  const before = await answers();
  await page.goto(`${url}/machine/${machine}/A/round`);
  await page.getByLabel('Your name').fill('R. Example');
  await page.locator('.stop summary').first().click();
  const items = page.locator('.stop .item');
  const [first, second] = [items.nth(0), items.nth(1)];

  await page.route('**/commands', (route) => route.abort());
  await first.getByText('as it should be', { exact: true }).last().click();
  await page.getByText(/^1 change waits for the server/).waitFor();
  await second.getByText('not as it should be', { exact: true }).click();
  await page.getByText(/^2 changes wait for the server/).waitFor();
  await second.getByLabel('In words').waitFor();
  await page.screenshot({ path: 'e2e/out/changes-wait.png' });
  expect(await answers()).toEqual(before);

  await page.reload();
  await page.getByText(/^2 changes wait for the server/).waitFor();
  await page.locator('.stop summary').first().click();
  await second.getByLabel('In words').waitFor();
  expect(await answers()).toEqual(before);

  await page.unroute('**/commands');
  await page.getByText('all changes kept').waitFor({ timeout: 30_000 });
  const given = Object.values(await answers()).map((a) => a.state);
  expect(given).toHaveLength(Object.keys(before).length + 2);
  expect(given).toEqual(expect.arrayContaining(['asItShould', 'notAsItShould']));

  for (const what of [1, 2]) {
    await page.getByRole('button', { name: /^Undo: Answer/ }).click();
    await expect.poll(async () => Object.keys(await answers()).length).toBe(given.length - what);
  }
  expect(await answers()).toEqual(before);
  await close();
});
