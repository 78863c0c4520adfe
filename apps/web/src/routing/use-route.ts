import { useSyncExternalStore } from 'react';
import { href, parseRoute, type Route } from './route.ts';

const listeners = new Set<() => void>();
let current = parseRoute(window.location.pathname);

window.addEventListener('popstate', () => {
  current = parseRoute(window.location.pathname);
  for (const listener of listeners) listener();
});

/** Goes to another address; `replace` when the way back should not lead through the present one. */
export function go(route: Route, how: 'push' | 'replace' = 'push'): void {
  const path = href(route);
  if (path === window.location.pathname) return;
  if (how === 'replace') window.history.replaceState(null, '', path);
  else window.history.pushState(null, '', path);
  current = parseRoute(path);
  for (const listener of listeners) listener();
}

export function useRoute(): Route {
  return useSyncExternalStore(subscribe, () => current);
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
