import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';

/** Software rendering, and nothing that would reach for a network. */
const flags = [
  '--no-sandbox',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function openBrowser(): Promise<Browser> {
  const executablePath = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';
  if (!existsSync(executablePath))
    throw new Error(`There is no browser at ${executablePath}: set CHROMIUM_PATH to a Chromium.`);
  return chromium.launch({ executablePath, args: flags });
}

export interface PageWish {
  readonly sheet: 'light' | 'dark';
  readonly width: number;
  readonly height: number;
}

/** A page without animation, and the faults that it reports while it is used. */
export async function openPage(
  browser: Browser,
  { sheet, width, height }: PageWish,
): Promise<{ page: Page; faults: string[]; close: () => Promise<void> }> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: sheet,
    reducedMotion: 'reduce',
  });
  // Smoothing costs software rendering four times the time and proves nothing here.
  await context.addInitScript(() =>
    window.localStorage.setItem('coveline.preferences', JSON.stringify({ antialias: false })),
  );
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('pageerror', (error) => faults.push(error.message));
  return { page, faults, close: () => context.close() };
}
