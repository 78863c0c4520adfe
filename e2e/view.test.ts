import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, openPage } from './browser.ts';

const url = inject('url');
const machine = inject('machine');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function openWalk(): Promise<{ page: Page; close: () => Promise<void> }> {
  const { page, close } = await openPage(browser, { sheet: 'light', width: 1024, height: 768 });
  await page.goto(`${url}/machine/${machine}/A/walk`);
  await page.getByRole('toolbar', { name: 'View' }).waitFor();
  await page.waitForTimeout(800);
  return { page, close };
}

test('the elevation walks the view by arrow keys, by wheel and by dragging', async () => {
  const { page, close } = await openWalk();
  const slider = page.getByRole('slider', { name: 'Height of the view above the floor' });
  const height = async () => Number(await slider.getAttribute('aria-valuenow'));
  const start = await height();
  await slider.focus();
  await page.keyboard.press('ArrowUp');
  await expect.poll(height).toBeGreaterThan(start);
  const up = await height();
  const box = (await slider.boundingBox())!;
  await page.mouse.move(box.x + 10, box.y + 12);
  await page.mouse.wheel(0, 100);
  await expect.poll(height).toBeLessThan(up);
  const now = (await slider.boundingBox())!;
  await page.mouse.move(now.x + 10, now.y + 12);
  await page.mouse.down();
  await page.mouse.move(now.x + 10, now.y + 150, { steps: 4 });
  await page.mouse.up();
  await expect.poll(height).toBeLessThan(start - 100);
  await page.keyboard.press('Home');
  await expect.poll(height).toBe(0);
  await close();
});

test('two picks measure a distance and say how exact it is', async () => {
  const { page, close } = await openWalk();
  await page.keyboard.press('m');
  const view = (await page.getByRole('application', { name: 'The machine in 3D' }).boundingBox())!;
  const middle = { x: view.x + view.width / 2, y: view.y + view.height / 2 };
  await page.mouse.click(middle.x - 40, middle.y - 130);
  await page.mouse.click(middle.x + 60, middle.y - 110);
  await page.getByText(/mm \(x .+\)(, exact on the model|, within)/).waitFor();
  await close();
});

test('the section is cut by number, and hidden parts are listed and come back', async () => {
  const { page, close } = await openWalk();
  await page.keyboard.press('s');
  const section = page.getByRole('group', { name: 'Section' });
  await section.getByRole('textbox', { name: 'Offset' }).fill('5 cm');
  await section.getByText('understood: 5 cm = 50 mm').waitFor();
  await section.getByRole('textbox', { name: 'Offset' }).press('Enter');
  await page.getByText(/section y at 50 mm/).waitFor();
  await page.screenshot({ path: 'e2e/out/section.png' });
  await page.keyboard.press('Escape');

  await page.goto(`${url}/machine/${machine}/A/model`);
  await page.getByLabel('Filter by name').fill('hood');
  await page.getByRole('row').nth(1).click();
  await page.keyboard.press('h');
  await page.getByRole('button', { name: /1 hidden/ }).click();
  const list = page.getByRole('dialog', { name: 'Hidden and ghosted parts' });
  await list.getByRole('button', { name: 'Show all' }).click();
  await page.getByText('nothing hidden').waitFor();
  await close();
});

test('a lost graphics context is said, and the picture returns', async () => {
  const { page, close } = await openWalk();
  const note = page.getByText('The graphics card took its memory back.');
  await page.evaluate(() => {
    const canvas = document.querySelector('canvas') as HTMLCanvasElement;
    const taken = canvas.getContext('webgl2')?.getExtension('WEBGL_lose_context');
    taken?.loseContext();
    setTimeout(() => taken?.restoreContext(), 1500);
  });
  await note.waitFor();
  await note.waitFor({ state: 'detached' });
  await page.screenshot({ path: 'e2e/out/context-restored.png' });
  await close();
});
