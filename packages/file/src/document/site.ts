/** The site that the survey goes by, one line a thing: what it is, how sure, and why. */
import { type SiteEntry, type SiteItem, siteEntries } from '@coveline/project';
import { proposeSite } from '@coveline/review';
import type { FileRequest } from '../request.ts';
import type { Row } from './content.ts';
import type { Printer } from './printable.ts';

const kinds: Readonly<Record<SiteItem['what'], string>> = {
  floor: 'Floor',
  wall: 'Wall',
  access: 'Access side',
  door: 'Door',
  mouth: 'Open container',
  filter: 'Filter face',
  nozzle: 'Nozzle',
  drain: 'Drain',
  main: 'Line of tubes',
};
const sure = { high: 'sure', medium: 'likely', low: 'a guess' } as const;
const standings: Readonly<Record<SiteEntry['standing'], string>> = {
  proposed: 'proposed',
  accepted: 'accepted',
  changed: 'changed by hand',
  added: 'added by hand',
  removed: 'left out',
};

export function siteRows({ project, revisionId, model }: FileRequest, { text, short }: Printer): Row[] {
  const { proposals } = proposeSite(model);
  return siteEntries(project.site[revisionId] ?? {}, proposals).map((entry) => {
    const { id, item, standing, confidence, holds, reason } = entry;
    const words = [standings[standing], ...(confidence === null ? [] : [sure[confidence]])].join(', ');
    const waits = standing === 'proposed' && !holds ? '; not used until somebody accepts it' : '';
    const name = id.slice(Math.max(id.lastIndexOf('/'), id.indexOf(':')) + 1);
    const what =
      standing === 'added' || item.what === 'floor' ? kinds[item.what] : `${kinds[item.what]}: ${name}`;
    return { label: short(what, 90), value: text(`${words}${waits}. ${reason}`) };
  });
}
