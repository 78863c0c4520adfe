import type { Catalogue } from '@coveline/catalogue';
import type { Brief, Product } from '@coveline/project';
import { formatQuantity } from '@coveline/quantity';
import { asksForLess, hazardsOf } from '@coveline/review';
import type { FileContent, Row } from './content.ts';
import type { Printer } from './printable.ts';
import { careWords, cleaningWords } from './words.ts';

/** The brief as short tables. What nobody filled in says so. */
export function briefContent(brief: Brief, catalogue: Catalogue, { text }: Printer): FileContent['brief'] {
  const row = (label: string, value: string): Row => ({ label, value: text(value || 'not stated') });
  const { environment, cleaning } = brief;
  return [
    {
      title: 'Use',
      rows: [
        row('Purpose', brief.purpose),
        row('Consumers', brief.consumers === 'vulnerable' ? 'vulnerable groups among them' : 'general'),
        row('Care level', careWords[brief.careLevel]),
        row('Surroundings', environment.description),
        row(
          'Room',
          `${formatQuantity(environment.room_degC, 'degC')}, ${environment.relativeHumidity_percent} % relative humidity`,
        ),
      ],
    },
    ...brief.products.map((product, i) => ({
      title: brief.products.length > 1 ? `Product ${i + 1}` : 'Product',
      rows: productRows(product, row),
    })),
    ...(brief.products.length === 0 ? [] : [{ title: 'Hazards', rows: hazardRows(brief, catalogue, row) }]),
    {
      title: 'Cleaning',
      rows: [
        row('Ways', cleaning.ways.map((way) => cleaningWords[way]).join(', ')),
        row('Interval', formatQuantity(cleaning.interval_h, 'h')),
        row('Rinse water', formatQuantity(cleaning.rinse_degC, 'degC')),
        row('Agents', cleaning.agents.join(', ')),
        row('Accepted pool', `${formatQuantity(brief.acceptedPool_mL, 'mL')}, an agreed criterion`),
        row('Profile of sources', catalogue.profiles.get(brief.profile)?.name ?? brief.profile),
      ],
    },
  ];
}

function hazardRows(brief: Brief, { sources }: Catalogue, row: (label: string, value: string) => Row): Row[] {
  const found = hazardsOf(brief);
  return [
    row(
      'Leads to',
      `${careWords[found.careLevel]}${asksForLess(brief, found) ? '; the brief asks for less' : ''}`,
    ),
    ...found.hazards.map((h) =>
      row(
        h.kind,
        `${h.text}${h.authority ? ' A process authority decides.' : ''} (${h.products.join(', ')}; ${sources.get(h.citation.source)?.title ?? h.citation.source}, ${h.citation.clause})`,
      ),
    ),
    ...found.assumptions.map((a) => row('Assumed', a)),
  ];
}

function productRows(p: Product, row: (label: string, value: string) => Row): Row[] {
  const number = (value: number | undefined, unit: string): string =>
    value === undefined ? '' : formatQuantity(value, unit);
  return [
    row('Name', p.name),
    row('pH', number(p.ph, '1')),
    row('Water activity', number(p.waterActivity, '1')),
    row(
      'Fat, protein',
      [number(p.fat_percent, '%'), number(p.protein_percent, '%')].filter(Boolean).join(', '),
    ),
    row('Kept at', number(p.storage_degC, 'degC')),
    row('Shelf life', p.shelfLife_days === undefined ? '' : `${p.shelfLife_days} days`),
    row('Allergens', p.allergens.join(', ')),
    row('Particles', p.particles ? 'yes' : 'none stated'),
  ];
}
