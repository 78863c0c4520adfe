import { createStore, useStore } from '../state/store.ts';

/** What is painted on the surface now, for the legend; null for nothing. */
export interface Painted {
  readonly measure: string;
  readonly unit: string;
  readonly high: number;
  /** CSS colours of the lowest and the highest value. */
  readonly from: string;
  readonly to: string;
}

const store = createStore<{ painted: Painted | null }>({ painted: null });

export const setPainted = (painted: Painted | null) => store.set({ painted });
export const usePainted = () => useStore(store).painted;
