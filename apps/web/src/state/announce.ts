import { createStore, useStore } from './store.ts';

const store = createStore({ text: '' });

/** Says something to whoever listens instead of looking: one sentence in the page's live region. */
export function announce(text: string): void {
  store.set({ text });
}

export const useAnnouncement = () => useStore(store).text;
