/**
 * Read a network in the text format of the public-domain hydraulics engine EPANET (EPANET 2.2 user manual, appendix
 * C): sections JUNCTIONS, RESERVOIRS, TANKS (at their initial level), PIPES, PUMPS with a head curve, CURVES, OPTIONS.
 * Darcy-Weisbach roughness in mm (metric) or thousandths of a foot. Anything else that would change the flow is refused by name.
 */
import type { FixedHead, Junction, Link, Network } from './network.ts';

export type NetworkReading =
  | { readonly kind: 'network'; readonly network: Network }
  | { readonly kind: 'error'; readonly message: string };

/** Flow units in m3/s. */
const flowUnits: Readonly<Record<string, number>> = {
  CMH: 1 / 3600,
  CMD: 1 / 86400,
  LPS: 1e-3,
  LPM: 1e-3 / 60,
  GPM: 3.785411784e-3 / 60,
  CFS: 0.3048 ** 3,
};
const customary = new Set(['GPM', 'CFS']);

const understood = new Set([
  'JUNCTIONS',
  'RESERVOIRS',
  'TANKS',
  'PIPES',
  'PUMPS',
  'CURVES',
  'OPTIONS',
  'TITLE',
  'END',
]);
/** Sections that do not change a steady flow. */
const harmless = new Set([
  'COORDINATES',
  'VERTICES',
  'LABELS',
  'BACKDROP',
  'TAGS',
  'REPORT',
  'TIMES',
  'ENERGY',
  'QUALITY',
  'REACTIONS',
  'SOURCES',
  'MIXING',
]);

class InpError extends Error {}

interface Row {
  readonly line: number;
  readonly fields: readonly string[];
}

function split(text: string): Map<string, Row[]> {
  const sections = new Map<string, Row[]>();
  let current: Row[] = [];
  text.split(/\r?\n/).forEach((raw, i) => {
    const line = raw.split(';')[0].trim();
    if (line === '') return;
    const head = /^\[(\w+)\]?/.exec(line);
    if (head) {
      const name = head[1].toUpperCase();
      current = sections.get(name) ?? [];
      sections.set(name, current);
    } else current.push({ line: i + 1, fields: line.split(/\s+/) });
  });
  return sections;
}

function numberAt(row: Row, at: number, what: string, fallback?: number): number {
  const field = row.fields[at];
  if (field === undefined && fallback !== undefined) return fallback;
  const value = Number(field);
  if (field === undefined || !Number.isFinite(value))
    throw new InpError(`line ${row.line}: the ${what} "${field ?? ''}" is not a number`);
  return value;
}

/** One point gives the standard curve, three points a power curve (EPANET 2.2 user manual, 3.2). */
function pumpCurve(
  points: readonly (readonly [number, number])[],
  row: Row,
): readonly [number, number, number] {
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const shaped =
    sorted.length === 1 ? ([[0, (4 / 3) * sorted[0][1]], sorted[0], [2 * sorted[0][0], 0]] as const) : sorted;
  if (shaped.length !== 3 || shaped[0][0] !== 0)
    throw new InpError(
      `line ${row.line}: a head curve needs one point, or three of which the first is at no flow`,
    );
  const [[, shutOff], [q1, h1], [q2, h2]] = shaped;
  if (!(shutOff > h1 && h1 > h2 && q2 > q1 && q1 > 0))
    throw new InpError(`line ${row.line}: the head of the pump must fall with the flow`);
  const exponent = Math.log((shutOff - h2) / (shutOff - h1)) / Math.log(q2 / q1);
  return [shutOff, (shutOff - h1) / q1 ** exponent, exponent];
}

function read(text: string): Network {
  const sections = split(text);
  const rows = (name: string) => sections.get(name) ?? [];
  for (const [name, content] of sections)
    if (!understood.has(name) && !harmless.has(name) && content.length > 0)
      throw new InpError(
        `line ${content[0].line}: section [${name}] is not read; write it as pipes with loss coefficients or leave it out`,
      );

  const option = (name: string) =>
    rows('OPTIONS')
      .find((row) => row.fields[0].toUpperCase() === name)
      ?.fields[1]?.toUpperCase();
  const units = option('UNITS') ?? 'GPM';
  const flowUnit = flowUnits[units];
  if (flowUnit === undefined)
    throw new InpError(
      `flow unit ${units} is not read, expected one of: ${Object.keys(flowUnits).join(', ')}`,
    );
  const law = option('HEADLOSS') ?? 'H-W';
  if (law !== 'D-W')
    throw new InpError(`head loss formula ${law} is not read: set "Headloss D-W" with roughness heights`);
  const us = customary.has(units);
  const length = us ? 0.3048 : 1;
  const bore = us ? 0.0254 : 1e-3;
  const roughness = us ? 0.3048e-3 : 1e-3;

  const junctions: Junction[] = rows('JUNCTIONS').map((row) => ({
    id: row.fields[0],
    elevation: numberAt(row, 1, 'elevation') * length,
    demand: numberAt(row, 2, 'demand', 0) * flowUnit,
  }));
  const fixed: FixedHead[] = [
    ...rows('RESERVOIRS').map((row) => ({ id: row.fields[0], head: numberAt(row, 1, 'head') * length })),
    ...rows('TANKS').map((row) => ({
      id: row.fields[0],
      head: (numberAt(row, 1, 'elevation') + numberAt(row, 2, 'initial level')) * length,
    })),
  ];
  const curves = new Map<string, [number, number][]>();
  for (const row of rows('CURVES')) {
    const points = curves.get(row.fields[0]) ?? [];
    points.push([
      numberAt(row, 1, 'flow of the curve') * flowUnit,
      numberAt(row, 2, 'head of the curve') * length,
    ]);
    curves.set(row.fields[0], points);
  }
  const links: Link[] = [];
  for (const row of rows('PIPES')) {
    const status = (row.fields[7] ?? 'OPEN').toUpperCase();
    if (status === 'CLOSED') continue;
    const pipe = {
      kind: 'pipe' as const,
      id: row.fields[0],
      from: row.fields[1],
      to: row.fields[2],
      length: numberAt(row, 3, 'length') * length,
      bore: numberAt(row, 4, 'bore') * bore,
      roughness: numberAt(row, 5, 'roughness') * roughness,
      minor: numberAt(row, 6, 'loss coefficient', 0),
      oneWay: status === 'CV',
    };
    if (!(pipe.length > 0 && pipe.bore > 0 && pipe.roughness >= 0 && pipe.minor >= 0))
      throw new InpError(
        `line ${row.line}: pipe ${pipe.id} needs a positive length and bore and no negative roughness`,
      );
    links.push(pipe);
  }
  for (const row of rows('PUMPS')) {
    const at = row.fields.findIndex((f) => f.toUpperCase() === 'HEAD');
    const points = at < 0 ? undefined : curves.get(row.fields[at + 1]);
    if (points === undefined)
      throw new InpError(`line ${row.line}: pump ${row.fields[0]} needs "HEAD" and a curve of [CURVES]`);
    const [shutOff, factor, exponent] = pumpCurve(points, row);
    links.push({
      kind: 'pump',
      id: row.fields[0],
      from: row.fields[1],
      to: row.fields[2],
      shutOff,
      factor,
      exponent,
    });
  }
  check(junctions, fixed, links);
  return { junctions, fixed, links };
}

function check(junctions: readonly Junction[], fixed: readonly FixedHead[], links: readonly Link[]): void {
  if (fixed.length === 0)
    throw new InpError('there is no reservoir or tank: one point of known head is needed');
  if (links.length === 0) throw new InpError('there is no pipe');
  const nodes = new Set<string>();
  for (const { id } of [...junctions, ...fixed]) {
    if (nodes.has(id)) throw new InpError(`node ${id} is there twice`);
    nodes.add(id);
  }
  for (const link of links)
    for (const end of [link.from, link.to])
      if (!nodes.has(end))
        throw new InpError(`${link.kind} ${link.id} ends at "${end}", which is not a node`);
}

export function readNetwork(text: string): NetworkReading {
  try {
    return { kind: 'network', network: read(text) };
  } catch (error) {
    if (error instanceof InpError) return { kind: 'error', message: error.message };
    throw error;
  }
}
