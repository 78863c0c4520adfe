import { createStore, useStore } from '../state/store.ts';

export type DialogName = 'palette' | 'help';

const store = createStore<{ open: DialogName | null }>({ open: null });

export const openDialog = (name: DialogName) => store.set({ open: name });
export const closeDialog = () => store.set({ open: null });
export const useOpenDialog = () => useStore(store).open;
