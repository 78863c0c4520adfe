import type { Catalogue } from './catalogue.ts';
import { type Pack, readPack, withPack } from './pack.ts';

export interface Packed {
  readonly catalogue: Catalogue;
  /** One sentence for each pack that was left aside. */
  readonly notes: readonly string[];
}

/**
 * A catalogue with packs, one after the other. A pack that was kept may clash with a catalogue that has grown since;
 * it is then left aside as a whole and told, so that no demand changes its meaning unseen.
 */
export function withPacks(base: Catalogue, packs: readonly Pack[]): Packed {
  const notes: string[] = [];
  const catalogue = packs.reduce((now, pack) => {
    const read = readPack(pack, now);
    if ('pack' in read) return withPack(now, read.pack);
    const [first, ...more] = read.problems;
    const others = more.length === 0 ? '' : ` (and ${more.length} more)`;
    notes.push(`The pack "${pack.name}" is left aside: ${first.replace(/\.$/, '')}${others}.`);
    return now;
  }, base);
  return { catalogue, notes };
}
