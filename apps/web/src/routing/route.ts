/** Addresses of the workbench. Everything that somebody may want to come back to has one. */

export const stops = ['brief', 'model', 'walk', 'cleaning', 'air', 'proof', 'file'] as const;
export type Stop = (typeof stops)[number];

/** Pages of a machine that are no stop of the path. */
export type Page = Stop | 'round' | 'revisions' | 'requirements' | 'history' | 'calculations' | 'site';

export type Route =
  | { readonly at: 'start' }
  | {
      readonly at: 'machine';
      readonly machine: string;
      /** Id of a revision, or null for the latest. */
      readonly revision: string | null;
      readonly page: Page;
      /** On the walk a finding, in the model a part. */
      readonly item: string | null;
    }
  /** Engineering calculations: all of them, or one by its name, as it is kept with a machine. */
  | { readonly at: 'calculations'; readonly name: string | null; readonly kept: KeptAt | null }
  | { readonly at: 'nowhere'; readonly path: string };

/** A calculation that is kept with a machine. */
export interface KeptAt {
  readonly machine: string;
  readonly id: string;
}

export type MachineRoute = Extract<Route, { at: 'machine' }>;

const pages: readonly string[] = [
  ...stops,
  'round',
  'revisions',
  'requirements',
  'history',
  'calculations',
  'site',
];
const latest = 'latest';

/**
 * `/machine/<machine>/<revision or latest>/<page>[/<item>]` or `/calculations[/<name>[/<machine>/<kept>]]`, each part
 * URI-encoded.
 */
export function parseRoute(path: string): Route {
  const [root, ...parts] = path
    .split('/')
    .filter((s) => s !== '')
    .map(decode);
  if (root === undefined) return { at: 'start' };
  if (root === 'calculations') {
    const [name = null, keptWith, id] = parts;
    if (parts.length === 3) return { at: 'calculations', name, kept: { machine: keptWith, id } };
    return parts.length < 2 ? { at: 'calculations', name, kept: null } : { at: 'nowhere', path };
  }
  const [machine, revision = latest, page = 'walk', item] = parts;
  if (root !== 'machine' || !machine || !pages.includes(page)) return { at: 'nowhere', path };
  return {
    at: 'machine',
    machine,
    revision: revision === latest ? null : revision,
    page: page as Page,
    item: item ?? null,
  };
}

export function href(route: Route): string {
  if (route.at === 'start') return '/';
  if (route.at === 'nowhere') return route.path;
  if (route.at === 'calculations') {
    const { name, kept } = route;
    const parts = [...(name === null ? [] : [name]), ...(kept === null ? [] : [kept.machine, kept.id])];
    return ['/calculations', ...parts.map(encodeURIComponent)].join('/');
  }
  const parts = [
    route.machine,
    route.revision ?? latest,
    route.page,
    ...(route.item === null ? [] : [route.item]),
  ];
  return `/machine/${parts.map(encodeURIComponent).join('/')}`;
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    // A stray "%": take it as it stands, it then leads nowhere.
    return part;
  }
}
