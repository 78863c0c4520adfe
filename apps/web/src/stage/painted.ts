import { createStore, useStore } from '../state/store.ts';

/** What is painted on the surface now, for the legend; null for nothing. */
export interface Painted {
  readonly measure: string;
  readonly unit: string;
  /** The numbers at the two ends, pale first; null where the paint only marks what is so. */
  readonly scale: { readonly pale: number; readonly full: number } | null;
  /** CSS colours of the two ends. */
  readonly pale: string;
  readonly full: string;
}

const store = createStore<{ painted: Painted | null }>({ painted: null });

export const setPainted = (painted: Painted | null) => store.set({ painted });
export const usePainted = () => useStore(store).painted;
