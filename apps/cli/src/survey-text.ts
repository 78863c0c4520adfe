/** The survey in words, for a reader at a terminal. */
import type { FastenerHead, Recognised, TiltedTotal, TiltRange } from '@coveline/survey';
import { aroundLines } from './around-text.ts';
import { reachLines } from './reach-text.ts';
import { siteLine } from './site-text.ts';
import type { SurveyJson } from './survey-json.ts';

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 3 });
const at = (p: readonly number[]) => `(${p.map((x) => Math.round(x)).join(', ')})`;
const named = (parts: readonly string[]) => parts.map((id) => id.split('/').at(-1)).join(' + ');
const shown = 5;

function list<T>(title: string, places: readonly T[], line: (place: T) => string): string[] {
  const more = places.length - shown;
  return [
    title,
    ...places.slice(0, shown).map((place) => `  ${line(place)}`),
    ...(more > 0 ? [`  and ${more} more: --json FILE writes all`] : []),
  ];
}

const headWords: Readonly<Record<FastenerHead['kind'], string>> = {
  hexagon: 'hexagon head',
  hexagonSocket: 'hexagon socket',
  slot: 'slot',
  crossRecess: 'cross recess',
  dome: 'domed head',
  cylinder: 'cylinder head',
  nut: 'nut',
  domedNut: 'domed nut',
  unknown: 'of unknown kind',
};

const recognisedBy: Readonly<Record<Recognised, string>> = {
  cad: 'by CAD faces',
  triangles: 'by triangles',
  repeated: 'by repetition',
  name: 'by its name',
};

/** ": 4 nut, 2 slot", the most frequent first; empty for nothing. */
function countsOf(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  const told = [...counts]
    .sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))
    .map(([word, n]) => `${n} ${word}`);
  return told.length > 0 ? ` (${told.join(', ')})` : '';
}

export function surveyText({ model, measures: m, notes, seconds, site, health }: SurveyJson): string {
  const lines = [
    `${model.file}: ${model.parts} parts, ${model.triangles} triangles, read in ${number.format(seconds.read)} s, ` +
      `surveyed in ${number.format(seconds.survey)} s`,
    ...(health?.faults.map(({ text }) => `Model: ${text}`) ?? []),
    ...(site ? [siteLine(site)] : []),
  ];
  if (m.standingLiquid) {
    const { places, total_mL, unsealed_mL, tilts } = m.standingLiquid;
    lines.push(
      ...list(`Standing liquid: ${number.format(total_mL)} mL in ${places.length} pools`, places, (p) =>
        [
          `${number.format(p.volume_mL)} mL`,
          `${number.format(p.depth_mm)} mm deep`,
          at(p.deepest_mm),
          named(p.parts),
        ].join('  '),
      ),
    );
    if (unsealed_mL !== undefined) {
      lines.push(`  with all seams as open as they are drawn: ${number.format(unsealed_mL)} mL`);
    }
    if (tilts) lines.push(...tiltLines(tilts));
  }
  if (m.flatFaces) {
    const { places, up_cm2, down_cm2 } = m.flatFaces;
    lines.push(
      ...list(
        `Flat faces: ${number.format(up_cm2)} cm2 up, ${number.format(down_cm2)} cm2 down`,
        places,
        (p) =>
          [
            `${number.format(p.area_cm2)} cm2 ${p.facing}`,
            `${number.format(p.slope_deg)} deg`,
            at(p.at_mm),
            named(p.parts),
          ].join('  '),
      ),
    );
  }
  if (m.insideCorners) {
    const { places, sharp_mm } = m.insideCorners;
    lines.push(
      ...list(`Inside corners: ${places.length}, ${number.format(sharp_mm)} mm of them sharp`, places, (p) =>
        [
          `${number.format(p.length_mm)} mm`,
          p.radius_mm === 0 ? 'sharp' : `R ${number.format(p.radius_mm)}`,
          `${number.format(p.angle_deg)} deg`,
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
    );
  }
  if (m.narrowGaps) {
    const { places, joints } = m.narrowGaps;
    lines.push(
      ...list(`Narrow gaps: ${places.length}`, places, (p) =>
        [
          `${number.format(p.width_mm)} mm wide`,
          `${number.format(p.depth_mm)} mm deep`,
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
      ...list(`Joint lines: ${joints.length}`, joints, (p) =>
        [`${number.format(p.length_mm)} mm`, at(p.at_mm), named(p.parts)].join('  '),
      ),
    );
  }
  if (m.hollows) {
    const { closed, blind, deadLegs = [], openMembers = [] } = m.hollows;
    lines.push(
      ...list(`Closed hollows: ${closed.length}`, closed, (p) =>
        [`${number.format(p.volume_mL)} mL`, at(p.at_mm), named(p.parts)].join('  '),
      ),
      ...list(`Blind channels: ${blind.length}`, blind, (p) =>
        [
          `${number.format(p.depth_mm)} mm deep`,
          `mouth ${number.format(p.mouth_mm)} mm`,
          `ratio ${number.format(p.ratio)}`,
          ...(p.inner
            ? [`behind a step to ${number.format(p.inner.bore_mm)} mm ${number.format(p.inner.ratio)}`]
            : []),
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
      ...list(`Dead legs: ${deadLegs.length}`, deadLegs, (p) =>
        [
          `${number.format(p.fromWall_mm)} mm from the wall of the main`,
          `bore ${number.format(p.bore_mm)} mm`,
          `ratio ${number.format(p.ratioFromWall)}, from the axis ${number.format(p.ratioFromAxis)}`,
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
      ...list(`Open hollow members: ${openMembers.length}`, openMembers, (p) =>
        [
          `${number.format(p.length_mm)} mm long`,
          `opening ${number.format(p.mouth_mm)} mm`,
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
    );
  }
  if (m.fasteners) {
    const { heads, threads } = m.fasteners;
    const free = [...threads].sort((a, b) => b.exposed_mm - a.exposed_mm);
    lines.push(
      ...list(
        `Heads of fasteners: ${heads.length}${countsOf(heads.map((h) => headWords[h.kind]))}`,
        heads,
        (p) =>
          [
            headWords[p.kind],
            ...(p.acrossFlats_mm === undefined ? [] : [`${number.format(p.acrossFlats_mm)} mm across flats`]),
            ...(p.diameter_mm === undefined ? [] : [`${number.format(p.diameter_mm)} mm wide`]),
            recognisedBy[p.from],
            at(p.at_mm),
            named(p.parts),
          ].join('  '),
      ),
      ...list(`Threads that stand free: ${threads.length}`, free, (p) =>
        [
          `${number.format(p.exposed_mm)} mm free`,
          `${p.inside ? 'inner ' : ''}Ø ${number.format(p.diameter_mm)} mm`,
          p.pitch_mm === undefined ? 'drawn plain' : `pitch ${number.format(p.pitch_mm)} mm`,
          recognisedBy[p.from],
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
      ),
    );
  }
  lines.push(...reachLines(m, list), ...aroundLines(m, list));
  if (notes.length > 0) lines.push('Notes', ...notes.map((note) => `  ${note}`));
  return `${lines.join('\n')}\n`;
}

function tiltLines({ range_deg, bestWithin_deg, level, worst, best }: TiltRange): string[] {
  const told = ({ x_deg, y_deg, total_mL }: TiltedTotal) =>
    `${number.format(total_mL)} mL at ${number.format(x_deg)} deg about x, ${number.format(y_deg)} deg about y`;
  return [
    `  level: ${number.format(level.total_mL)} mL`,
    `  worst within ${range_deg} deg: ${told(worst)}`,
    `  least within ${bestWithin_deg} deg: ${told(best)}`,
  ];
}
