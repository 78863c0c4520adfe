import { createStore, useStore } from './store.ts';

/** What a person set for this browser. */
export interface Preferences {
  readonly sheet: 'system' | 'light' | 'dark';
  /** Single-key shortcuts; they can be turned off (WCAG 2.1.4). */
  readonly singleKeys: boolean;
  /** Smooth edges in the view; costs time where there is no graphics card. */
  readonly antialias: boolean;
  /** Stands with what this person finds on the round. */
  readonly name: string;
}

const key = 'coveline.preferences';
const usual: Preferences = { sheet: 'system', singleKeys: true, antialias: true, name: '' };

const store = createStore<Preferences>({ ...usual, ...read() });

function read(): Partial<Preferences> {
  try {
    return JSON.parse(window.localStorage.getItem(key) ?? '{}') as Partial<Preferences>;
  } catch {
    // Storage is blocked or its content is not ours: the usual settings serve.
    return {};
  }
}

export function setPreferences(change: Partial<Preferences>): void {
  store.set(change);
  applySheet();
  try {
    window.localStorage.setItem(key, JSON.stringify(store.get()));
  } catch {
    // Storage is blocked: the choice holds until the page is closed.
  }
}

export const usePreferences = () => useStore(store);
export const preferences = store.get;

const dark = window.matchMedia('(prefers-color-scheme: dark)');

/** The sheet in use, with the system's wish followed. */
export function sheetNow(): 'light' | 'dark' {
  const { sheet } = store.get();
  return sheet === 'system' ? (dark.matches ? 'dark' : 'light') : sheet;
}

/** Puts the sheet on the page, now and whenever the system's wish changes. */
export function applySheet(): void {
  document.documentElement.dataset.sheet = sheetNow();
}

export function onSheetChange(run: () => void): () => void {
  const off = store.subscribe(run);
  dark.addEventListener('change', run);
  return () => {
    off();
    dark.removeEventListener('change', run);
  };
}
