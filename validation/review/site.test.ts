/**
 * What is proposed of the site of the demo machine, against the parameters that it is drawn from. Invented; the numbers
 * are those of the drawing.
 */
import { readModel } from '@coveline/cad';
import {
  machine,
  type Parameters,
  revisionA,
  revisionB,
  startKernel,
  stepFileName,
  writeStep,
} from '@coveline/porridge-doser';
import type { SiteItem, SiteProposal } from '@coveline/project';
import { proposeSite, type SiteProposals } from '@coveline/review';
import { beforeAll, describe, expect, test } from 'vitest';

const found = new Map<Parameters, SiteProposals>();

beforeAll(async () => {
  await startKernel();
  for (const p of [revisionA, revisionB]) {
    const step = new TextEncoder().encode(writeStep(machine(p), stepFileName(p)));
    found.set(p, proposeSite(await readModel(step, stepFileName(p))));
  }
}, 200_000);

type Of<W extends SiteItem['what']> = SiteProposal & { readonly item: Extract<SiteItem, { what: W }> };

describe.each([revisionA, revisionB])('revision $revision', (p) => {
  const of = <W extends SiteItem['what']>(what: W): Of<W>[] =>
    found.get(p)!.proposals.filter((one): one is Of<W> => one.item.what === what);

  test('stands on its four levelling feet, and nothing speaks against its up direction', () => {
    expect(of('floor')).toMatchObject([{ item: { height_mm: 0 }, confidence: 'high' }]);
    expect(of('floor')[0].reason).toMatch(/^4 feet/);
    expect(found.get(p)!.notes).toEqual([]);
  });

  test('is worked at from the front, where the panel is; its back is closed by a wall', () => {
    const sides = of('access').map(({ id, confidence }) => [id, confidence]);
    expect(sides).toEqual([
      ['access:front', 'high'],
      ['access:left', 'medium'],
      ['access:right', 'medium'],
      ['access:back', 'low'],
    ]);
  });

  test('has four open jars of 68 mm in the lane under the hood, and the hopper', () => {
    const mouths = of('mouth');
    const jars = mouths.filter((m) => m.confidence === 'high');
    // Jars: mouth 68 mm, standing at 632 mm, 95 mm high, in the lane at y = -80; two lidded ones are not open.
    expect(jars.map((m) => m.item.at_mm[0]).sort((a, b) => a - b)).toEqual([-500, -395, -60, 80]);
    for (const { item } of jars) {
      expect(item.radius_mm).toBeCloseTo(34, 6);
      expect(item.at_mm[1]).toBeCloseTo(-80, 6);
      expect(item.at_mm[2]).toBeCloseTo(632 + 95, 6);
      expect(item.outward).toEqual([0, 0, 1]);
    }
    const others = mouths.filter((m) => m.confidence === 'medium');
    expect(others.map((m) => m.id)).toEqual([expect.stringContaining('hopper 12 L')]);
  });

  test('air comes down out of the one filter face of the hood, not out of its frame or the housing', () => {
    const [filter, ...more] = of('filter');
    expect(more).toEqual([]);
    expect(filter.confidence).toBe('high');
    expect(filter.item.parts).toEqual([expect.stringContaining('filter H14')]);
    expect(filter.item.at_mm[2]).toBeCloseTo(1210, 6);
    expect(filter.item.flow[2]).toBeCloseTo(-1, 9);
    // 1060 by 515 mm, from x -530 to 530 and y -290 to 225.
    const halves = [filter.item.across_mm, filter.item.along_mm]
      .map((v) => Math.hypot(...v))
      .sort((a, b) => a - b);
    expect(halves[0]).toBeCloseTo(257.5, 6);
    expect(halves[1]).toBeCloseTo(530, 6);
  });

  test('the front visor swings on its three hinges; the cabinet door, drawn without, is a guess', () => {
    const [visor, cabinet, ...more] = of('door');
    expect(more).toEqual([]);
    expect(visor).toMatchObject({ confidence: 'high' });
    expect(visor.item.parts[0]).toContain('front visor');
    expect(visor.item.parts).toHaveLength(4);
    expect(Math.abs(visor.item.hinge.axis[0])).toBeCloseTo(1, 9);
    // Hinges stand at y = -318 and z = 1208, their axis 6 mm in front.
    expect(visor.item.hinge.at_mm[1]).toBeCloseTo(-324, 6);
    expect(visor.item.hinge.at_mm[2]).toBeCloseTo(1208, 6);
    expect(cabinet).toMatchObject({ confidence: 'low' });
    expect(cabinet.item.parts[0]).toContain('cabinet door');
  });

  test('one spray head sprays all round; the dosing nozzle cleans nothing', () => {
    const [head, ...more] = of('nozzle');
    expect(more).toEqual([]);
    expect(head.item.parts).toEqual([expect.stringContaining('spray head')]);
    expect(head.item.cone_deg).toBe(360);
  });

  test('liquid leaves by the drain of the tray and the outlet of the tank; round edges are no drains', () => {
    const drains = of('drain').map(({ item, confidence }) => [Math.round(item.diameter_mm), confidence]);
    expect(drains).toEqual([
      [25, 'high'],
      [23, 'medium'],
    ]);
  });

  test('the product line is one chain of tubes, without the cap of its branch', () => {
    const product = of('main').filter((m) => m.confidence === 'medium');
    expect(product).toHaveLength(1);
    expect(product[0].item.parts).toEqual(
      expect.arrayContaining([
        expect.stringContaining('nozzle bend'),
        expect.stringContaining('product bend'),
        expect.stringContaining('sampling tee'),
      ]),
    );
    expect(product[0].item.parts.join()).not.toMatch(/cap|drain/);
  });
});
