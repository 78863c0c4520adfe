/** Round vessels. Volumes of cap, cylinder, sphere and torus: elementary geometry. */
import { expect, test } from 'vitest';
import { box, hollowBox, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { modelOf, placed } from '../../shapes/mesh.ts';
import { polygonShare } from '../../shapes/revolve.ts';
import { difference } from '../../shapes/solid.ts';
import { cup, dish, flask, ring, uPipe } from '../../shapes/vessels.ts';
import { poolsIn } from './pools-in.ts';

/** Facets lie inside the round surface: with this many segments they lose less than 0.05 % of a volume. */
const n = 256;
const capVolume = (r: number, h: number): number => (Math.PI * h * h * (3 * r - h)) / 3;

function expectVolume(volume_mL: number, expected_mm3: number, within = 0.01): void {
  expect(Math.abs((volume_mL * 1000) / expected_mm3 - 1)).toBeLessThan(within);
}

test.each([0, 20, 45])('spherical dish at %s degrees', async (tilt) => {
  for (const radius of [15, 150]) {
    const model = modelOf([
      { id: 'dish', mesh: dish(radius, radius / 50, n), placement: placed({ tiltX: tilt }) },
    ]);
    const { pools } = await poolsIn(model);
    expect(pools).toHaveLength(1);
    const depth = radius * (1 - Math.sin((tilt * Math.PI) / 180));
    expectVolume(pools[0].volume_mL, capVolume(radius, depth));
    expect(Math.abs(pools[0].depth_mm / depth - 1)).toBeLessThan(0.01);
  }
});

test('flask, upright, lying and upside down', async () => {
  const [radius, neck, mouth] = [40, 10, 70];
  const mesh = flask(radius, neck, mouth, 2, n);
  const shoulder = Math.sqrt(radius ** 2 - neck ** 2);
  const upright = await poolsIn(modelOf([{ id: 'flask', mesh }]));
  expectVolume(
    upright.total_mL,
    capVolume(radius, radius + shoulder) + Math.PI * neck ** 2 * (mouth - shoulder),
  );
  const lying = await poolsIn(modelOf([{ id: 'flask', mesh, placement: placed({ tiltX: 90 }) }]));
  expectVolume(lying.total_mL, capVolume(radius, radius - neck));
  const upsideDown = await poolsIn(modelOf([{ id: 'flask', mesh, placement: placed({ tiltX: 180 }) }]));
  expect(upsideDown.total_mL).toBe(0);
});

test.each([5, 10])('tank with a side hole of %s mm', async (diameter) => {
  const tank = difference(
    cup(50, 100, 2, n),
    cylinder(diameter / 2, 40, 64, placed({ tiltY: 90, move: [30, 0, 40] })),
  );
  for (const turn of [0, 31, 45]) {
    const { pools } = await poolsIn(modelOf([{ id: 'tank', mesh: tank, placement: placed({ turn }) }]));
    expect(pools).toHaveLength(1);
    expectVolume(pools[0].volume_mL, polygonShare(n) * Math.PI * 2500 * (40 - diameter / 2));
  }
});

test.each([2, 6])('U of pipe, one leg %s mm shorter', async (shorter) => {
  const [bore, bend, leg] = [20, 60, 40];
  const { pools } = await poolsIn(modelOf([{ id: 'u', mesh: uPipe(bore, 1, bend, leg, leg - shorter, n) }]));
  expect(pools).toHaveLength(1);
  const section = (Math.PI * bore ** 2) / 4;
  expectVolume(pools[0].volume_mL, section * (Math.PI * bend + 2 * (leg - shorter)));
});

test('ring on a plate', async () => {
  const model = modelOf([
    { id: 'plate', mesh: box([-100, -100, -5], [100, 100, 0]) },
    { id: 'ring', mesh: ring(60, 63, 8, n) },
  ]);
  const { pools } = await poolsIn(model);
  expect(pools).toHaveLength(1);
  expect(pools[0].parts).toEqual(['plate', 'ring']);
  expectVolume(pools[0].volume_mL, Math.PI * 3600 * 8);
});

test('an inverted cup is dry', async () => {
  const inverted = placed({ tiltX: 180, move: [0, 0, 60] });
  const { total_mL } = await poolsIn(modelOf([{ id: 'cup', mesh: cup(30, 50, 2, n), placement: inverted }]));
  expect(total_mL).toBe(0);
});

test('liquid that stands around an inverted cup stands under it too', async () => {
  // A cup over a tray, its rim 5 mm over the floor, the tray 20 mm deep: all of the tray fills but the cup's wall.
  const mesh = cup(30, 50, 2, n);
  const model = modelOf([
    { id: 'tray', mesh: tray(160, 120, 20, 2) },
    { id: 'cup', mesh, placement: placed({ tiltX: 180, move: [80, 60, 55] }) },
  ]);
  const { pools } = await poolsIn(model);
  expect(pools).toHaveLength(1);
  expectVolume(pools[0].volume_mL, 160 * 120 * 20 - polygonShare(n) * Math.PI * (32 ** 2 - 30 ** 2) * 15);
  expect(pools[0].parts).toEqual(['cup', 'tray']);
});

test('a closed hollow box is not a pool', async () => {
  const { total_mL } = await poolsIn(modelOf([{ id: 'box', mesh: hollowBox(60, 40, 30, 2) }]));
  expect(total_mL).toBe(0);
});
