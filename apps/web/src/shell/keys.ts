import type { ViewName } from '@coveline/viewer';

/** What can be done by key or from the palette. */
export type Action =
  | { readonly do: 'fit' | 'parallel' | 'section' | 'measure' | 'hide' | 'isolate' | 'ghost' | 'showAll' }
  | { readonly do: 'next' | 'previous' | 'list' | 'help' }
  | { readonly do: 'view'; readonly view: ViewName };

/** Single keys; they can be turned off in the settings (WCAG 2.1.4). */
export const singleKeys: Readonly<Record<string, Action>> = {
  f: { do: 'fit' },
  j: { do: 'next' },
  k: { do: 'previous' },
  l: { do: 'list' },
  p: { do: 'parallel' },
  s: { do: 'section' },
  m: { do: 'measure' },
  h: { do: 'hide' },
  i: { do: 'isolate' },
  g: { do: 'ghost' },
  a: { do: 'showAll' },
  '?': { do: 'help' },
  '1': { do: 'view', view: 'front' },
  '2': { do: 'view', view: 'back' },
  '3': { do: 'view', view: 'left' },
  '4': { do: 'view', view: 'right' },
  '5': { do: 'view', view: 'top' },
  '6': { do: 'view', view: 'bottom' },
  '7': { do: 'view', view: 'iso' },
};

/** True while typing, or in a list that takes letters itself: then single keys mean themselves. */
export function takesLetters(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return (
    target.isContentEditable ||
    target.closest(
      'input:not([type=checkbox]):not([type=radio]), textarea, select, [role=dialog], [role=menu], [role=listbox]',
    ) !== null
  );
}
