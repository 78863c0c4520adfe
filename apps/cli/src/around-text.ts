/** What depends on the surroundings of a machine, in words: jets, first air, what hangs overhead, clearances. */
import type { Clearance, JetShadow, SurveyMeasures } from '@coveline/survey';

/** Writes one list of places; see `surveyText`. */
export type Lister = <T>(title: string, places: readonly T[], line: (place: T) => string) => string[];

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 3 });
const percent = (share: number) => `${number.format(share * 100)} %`;
const at = (p: readonly number[]) => `(${p.map((x) => Math.round(x)).join(', ')})`;
const named = (parts: readonly string[]) => parts.map((id) => id.split('/').at(-1)).join(' + ');

const because: Readonly<Record<JetShadow['because'], string>> = {
  shaded: 'in the shadow of',
  aside: 'beside every cone',
  turned: 'turned away',
};

export function aroundLines(m: SurveyMeasures, list: Lister): string[] {
  const lines: string[] = [];
  if (m.jetReach && m.jetReach.nozzles.length > 0) {
    const { seen_cm2, unseen_cm2, nozzles, places } = m.jetReach;
    lines.push(
      ...list(
        `Jets: ${nozzles.length} nozzles see ${number.format(seen_cm2)} cm2 and not ${number.format(unseen_cm2)} cm2`,
        places,
        (p) =>
          [
            `${number.format(p.area_cm2)} cm2`,
            p.because === 'shaded' ? `${because.shaded} ${named(p.shadedBy)}` : because[p.because],
            at(p.at_mm),
            named(p.parts),
          ].join('  '),
      ),
    );
  }
  if (m.openSky && m.openSky.places.length > 0) {
    const { places } = m.openSky;
    const least = [...places].sort((a, b) => a.open - b.open);
    lines.push(
      ...list(`First air: ${places.length} mouths`, least, (p) =>
        [
          `${percent(p.open)} open`,
          p.mouth,
          ...p.interruptedBy.slice(0, 3).map(({ part, share }) => `${named([part])} ${percent(share)}`),
          ...(p.past > 0.0005 ? [`${percent(p.past)} beside the stream`] : []),
          at(p.at_mm),
        ].join('  '),
      ),
    );
  }
  if (m.overhead && m.overhead.places.length > 0) {
    const most = [...m.overhead.places].sort((a, b) => b.covers - a.covers || b.beside - a.beside);
    lines.push(
      ...list(`Overhead: ${most.length} parts above mouths`, most, (p) =>
        [
          p.covers > 0 ? `${percent(p.covers)} of ${p.mouth}` : `beside ${p.mouth}`,
          `${number.format(p.height_mm)} mm above it`,
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
    );
  }
  if (m.clearances && m.clearances.places.length > 0) {
    const { places } = m.clearances;
    const of = (kind: Clearance['kind']) => places.filter((p) => p.kind === kind);
    const distance = (p: Clearance) =>
      [`${number.format(p.distance_mm ?? 0)} mm`, at(p.at_mm), named(p.parts)].join('  ');
    if (of('floor').length > 0) {
      lines.push(...list(`Low over the floor: ${of('floor').length} undersides`, of('floor'), distance));
    }
    if (of('wall').length > 0) lines.push(...list('To the walls', of('wall'), distance));
    if (of('door').length > 0) {
      lines.push(
        ...list('Doors', of('door'), (p) =>
          [
            `opens ${number.format(p.opens_deg ?? 0)} deg`,
            p.strikes && p.strikes.length > 0 ? `strikes ${named(p.strikes)}` : 'strikes nothing',
            p.of ?? '',
            named(p.parts),
          ].join('  '),
        ),
      );
    }
  }
  return lines;
}
