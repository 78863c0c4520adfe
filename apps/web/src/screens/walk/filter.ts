import type { AreaClass } from '@coveline/catalogue';
import type { Kind } from '../../signs/kind.ts';
import { createStore, useStore } from '../../state/store.ts';

/** Which findings are looked at now. */
export interface Filter {
  readonly kind: Kind | 'all';
  readonly area: AreaClass | 'all';
  readonly state: 'all' | 'open' | 'decided';
}

const store = createStore<Filter>({ kind: 'all', area: 'all', state: 'all' });

export const currentFilter = store.get;
export const setFilter = store.set;
export const useFindingFilter = () => useStore(store);
