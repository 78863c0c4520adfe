import type { MeasureName } from '@coveline/survey';
import type { Projection, SectionSetting } from '@coveline/viewer';
import { createStore, useStore } from '../state/store.ts';

/** How the machine is looked at. Not part of the project: nobody else sees it, and a reload forgets it. */
export interface ViewState {
  readonly hidden: ReadonlySet<string>;
  readonly ghosts: ReadonlySet<string>;
  /** Ids of chosen parts. */
  readonly chosen: readonly string[];
  readonly section: SectionSetting | null;
  readonly measuring: boolean;
  readonly projection: Projection;
  /** Painted because somebody asked for it; a chosen finding paints its own measure. */
  readonly paint: MeasureName | null;
  readonly colorBy: 'model' | 'area';
}

const start: ViewState = {
  hidden: new Set(),
  ghosts: new Set(),
  chosen: [],
  section: null,
  measuring: false,
  projection: 'perspective',
  paint: null,
  colorBy: 'model',
};

const store = createStore<ViewState>(start);

export const viewState = store.get;
export const setView = store.set;
export const resetView = () => store.set(start);
export const useViewState = () => useStore(store);

export function hideParts(parts: readonly string[]): void {
  const { hidden } = store.get();
  store.set({ hidden: new Set([...hidden, ...parts]), chosen: [] });
}

export function ghostParts(parts: readonly string[]): void {
  const { ghosts } = store.get();
  store.set({ ghosts: new Set([...ghosts, ...parts]) });
}

/** Everything but these goes out of sight. */
export function isolateParts(parts: readonly string[], all: readonly string[]): void {
  const kept = new Set(parts);
  store.set({ hidden: new Set(all.filter((id) => !kept.has(id))), ghosts: new Set() });
}

export function showParts(parts: readonly string[]): void {
  const gone = new Set(parts);
  const { hidden, ghosts } = store.get();
  store.set({
    hidden: new Set([...hidden].filter((id) => !gone.has(id))),
    ghosts: new Set([...ghosts].filter((id) => !gone.has(id))),
  });
}

export const showAllParts = () => store.set({ hidden: new Set(), ghosts: new Set() });
