/** Properties that hold for any model: turning, scaling, joining, repeating. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { box, tray } from '../../../../validation/shapes/box.ts';
import {
  about,
  type Body,
  modelOf,
  movedModel,
  multiply,
  placed,
  scaled,
} from '../../../../validation/shapes/mesh.ts';
import { cup, dish } from '../../../../validation/shapes/vessels.ts';
import { defaultSettings } from '../settings.ts';
import { SurveyStopped } from '../stopped.ts';
import { loadManifoldUnion } from './exact/manifold-union.ts';
import { measureStandingLiquid } from './standing-liquid.ts';

const seed = 20;
const settings = { ...defaultSettings, leastPool_mL: 1e-6, leastPoolDepth_mm: 1e-4 };

/** A few vessels that stand apart, tilted a little each. */
const vessels = fc
  .array(
    fc.record({
      kind: fc.constantFrom('tray', 'cup', 'dish'),
      size: fc.double({ min: 20, max: 60, noNaN: true }),
      tiltX: fc.double({ min: -6, max: 6, noNaN: true }),
      tiltY: fc.double({ min: -6, max: 6, noNaN: true }),
      turn: fc.double({ min: 0, max: 360, noNaN: true }),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((list): Body[] =>
    list.map(({ kind, size, tiltX, tiltY, turn }, k) => ({
      id: `${kind} ${k}`,
      mesh:
        kind === 'tray'
          ? tray(size, size / 2, size / 3, 1)
          : kind === 'cup'
            ? cup(size / 3, size / 2, 1, 24)
            : dish(size / 2, 1, 24),
      placement: placed({ turn, tiltX, tiltY, move: [k * 200, 0, 0] }),
    })),
  );

const total = (bodies: readonly Body[]): number =>
  measureStandingLiquid(modelOf(bodies), settings).measure.total_mL;

function expectRatio(value: number, expected: number, within: number): void {
  expect(Math.abs(value / expected - 1)).toBeLessThan(within);
}

describe(`seed ${seed}`, { timeout: 120_000 }, () => {
  test('turning the model about the vertical changes nothing', () => {
    fc.assert(
      fc.property(vessels, fc.double({ min: 0, max: 360, noNaN: true }), (bodies, angle) => {
        const turned = measureStandingLiquid(movedModel(modelOf(bodies), about(2, angle)), settings);
        expectRatio(turned.measure.total_mL, total(bodies), 0.01);
      }),
      { seed, numRuns: 8 },
    );
  });

  test('scaling scales volumes by its cube', () => {
    fc.assert(
      fc.property(vessels, fc.double({ min: 0.3, max: 4, noNaN: true }), (bodies, factor) => {
        const larger = bodies.map(({ id, mesh, placement = about(2, 0) }) => {
          const moved = placement.slice();
          for (let k = 12; k < 15; k++) moved[k] *= factor;
          return { id, mesh: scaled(mesh, factor), placement: moved };
        });
        expectRatio(total(larger), total(bodies) * factor ** 3, 0.01);
      }),
      { seed, numRuns: 8 },
    );
  });

  test('joining two models that stand apart adds their pools', () => {
    fc.assert(
      fc.property(vessels, vessels, (one, other) => {
        const aside = other.map((body) => {
          const placement = (body.placement as Float64Array).slice();
          placement[13] += 300;
          return { ...body, id: `other ${body.id}`, placement };
        });
        const joined = measureStandingLiquid(modelOf([...one, ...aside]), settings).measure;
        expect(joined.places).toHaveLength(
          measureStandingLiquid(modelOf(one), settings).measure.places.length +
            measureStandingLiquid(modelOf(aside), settings).measure.places.length,
        );
        expectRatio(joined.total_mL, total(one) + total(aside), 0.01);
      }),
      { seed, numRuns: 6 },
    );
  });
});

const bowl: Body = { id: 'bowl', mesh: cup(40, 30, 1, 48) };

test('the same model gives the same bytes', () => {
  const model = modelOf([bowl, { id: 'tray', mesh: tray(200, 100, 10, 1), placement: placed({ tiltY: 2 }) }]);
  const one = measureStandingLiquid(model, defaultSettings);
  const two = measureStandingLiquid(model, defaultSettings);
  expect(JSON.stringify(two.measure)).toBe(JSON.stringify(one.measure));
  expect(two.field).toEqual(one.field);
  expect([...two.drawings]).toEqual([...one.drawings]);
});

test('the field tells the depth on the wetted faces only', () => {
  const { field } = measureStandingLiquid(
    modelOf([{ id: 'tray', mesh: tray(200, 100, 30, 2) }]),
    defaultSettings,
  );
  const depths = [...field].filter((d) => !Number.isNaN(d));
  // Inside: two triangles of the floor at the full depth, eight of the walls at a third and two thirds of it.
  expect(depths).toHaveLength(10);
  expect(depths.filter((d) => Math.abs(d - 30) < 1e-6)).toHaveLength(2);
  expect(depths.filter((d) => Math.abs(d - 10) < 1e-6)).toHaveLength(4);
});

test('the drawing covers the surface at its height', () => {
  const { measure, drawings } = measureStandingLiquid(modelOf([bowl]), defaultSettings);
  const triangles = drawings.get(measure.places[0].id)?.triangles as Float32Array;
  let area = 0;
  for (let t = 0; t < triangles.length; t += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = triangles.subarray(t, t + 9);
    expect([az, bz, cz]).toEqual([30, 30, 30]);
    expect(Math.max(Math.hypot(ax, ay), Math.hypot(bx, by), Math.hypot(cx, cy))).toBeLessThan(40.01);
    area += ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2;
  }
  expect(area / 100).toBeCloseTo(measure.places[0].area_cm2, 2);
  expectRatio(area, Math.PI * 1600, 0.005);
});

describe('dirty geometry', () => {
  const flipped = (body: Body): Body => {
    const triangles = body.mesh.triangles.slice();
    for (let t = 0; t < triangles.length; t += 3) {
      triangles[t + 1] = body.mesh.triangles[t + 2];
      triangles[t + 2] = body.mesh.triangles[t + 1];
    }
    return { ...body, mesh: { ...body.mesh, triangles } };
  };

  test('a body that is inside out is turned, and a note says so', () => {
    const { measure, notes } = measureStandingLiquid(modelOf([flipped(bowl)]), defaultSettings);
    expectRatio(
      measure.total_mL,
      measureStandingLiquid(modelOf([bowl]), defaultSettings).measure.total_mL,
      1e-9,
    );
    expect(notes.join()).toContain('inside out');
  });

  test('every other triangle wound the wrong way is mended', () => {
    const triangles = bowl.mesh.triangles.slice();
    for (let t = 0; t < triangles.length; t += 6) {
      triangles[t + 1] = bowl.mesh.triangles[t + 2];
      triangles[t + 2] = bowl.mesh.triangles[t + 1];
    }
    const { measure, notes } = measureStandingLiquid(
      modelOf([{ ...bowl, mesh: { ...bowl.mesh, triangles } }]),
      defaultSettings,
    );
    expectRatio(
      measure.total_mL,
      measureStandingLiquid(modelOf([bowl]), defaultSettings).measure.total_mL,
      1e-9,
    );
    expect(notes.join()).toContain('consistent');
  });

  test('vertices that are not shared are joined by their place', () => {
    const { positions, triangles } = bowl.mesh;
    const loose = {
      positions: Float64Array.from([...triangles].flatMap((v) => [...positions.subarray(v * 3, v * 3 + 3)])),
      triangles: Uint32Array.from(triangles, (_, k) => k),
    };
    const { measure, notes } = measureStandingLiquid(
      modelOf([{ id: 'loose', mesh: loose }]),
      defaultSettings,
    );
    expectRatio(
      measure.total_mL,
      measureStandingLiquid(modelOf([bowl]), defaultSettings).measure.total_mL,
      1e-9,
    );
    expect(notes).toEqual([]);
  });

  test('one lost triangle is capped', () => {
    const mesh = { ...bowl.mesh, triangles: bowl.mesh.triangles.subarray(3) };
    const { measure, notes } = measureStandingLiquid(modelOf([{ id: 'torn', mesh }]), defaultSettings);
    expectRatio(
      measure.total_mL,
      measureStandingLiquid(modelOf([bowl]), defaultSettings).measure.total_mL,
      1e-6,
    );
    expect(notes.join()).toContain('capped');
  });

  test('a vessel that was drawn as a surface holds liquid as a thin wall does', () => {
    // A cube without its lid.
    const { positions, triangles } = box([0, 0, 0], [60, 60, 40]);
    const open = {
      positions,
      triangles: Uint32Array.from([...triangles.subarray(0, 6), ...triangles.subarray(12)]),
    };
    const { measure, notes } = measureStandingLiquid(modelOf([{ id: 'sheet', mesh: open }]), defaultSettings);
    expectRatio(measure.total_mL, 144, 0.005);
    expect(measure.places[0].parts).toEqual(['sheet']);
    expect(notes.join()).toContain('thin sheet');
  });

  test('an empty model has no pools', () => {
    const { measure, field } = measureStandingLiquid(modelOf([]), defaultSettings);
    expect(measure).toEqual({ total_mL: 0, places: [] });
    expect(field).toHaveLength(0);
  });
});

test('a coordinate that is not a number is named', () => {
  const positions = bowl.mesh.positions.slice();
  positions[7] = Number.NaN;
  expect(() =>
    measureStandingLiquid(modelOf([{ ...bowl, mesh: { ...bowl.mesh, positions } }]), defaultSettings),
  ).toThrow('Part "bowl": vertex 2 has a coordinate that is not a finite number');
});

test('flat, thin and tiny models are measured without fuss', () => {
  for (const [x, y, z] of [
    [1000, 1e-9, 500],
    [1e-3, 1e-3, 1e-3],
    [20_000, 5, 5],
    [1, 1, 10_000],
  ] as const) {
    const { measure } = measureStandingLiquid(
      modelOf([{ id: 'box', mesh: box([0, 0, 0], [x, y, z]) }]),
      defaultSettings,
    );
    expect(measure.total_mL).toBe(0);
  }
});

test('an aborted signal stops the measure', () => {
  expect(() =>
    measureStandingLiquid(modelOf([bowl]), defaultSettings, { signal: { aborted: true } }),
  ).toThrow(SurveyStopped);
});

test('a signal that is aborted while the columns are built stops them there', () => {
  const signal = { aborted: false };
  let last = 0;
  const onProgress = (_: string, done: number): void => {
    last = done;
    if (done > 0.2) signal.aborted = true;
  };
  expect(() => measureStandingLiquid(modelOf([bowl]), defaultSettings, { signal, onProgress })).toThrow(
    SurveyStopped,
  );
  expect(last).toBeLessThan(0.25);
});

test('what stands in a steep sloping groove is doubted by columns, and dropped by the exact method', async () => {
  const plate = (id: string, y: number, tiltX: number): Body => ({
    id,
    mesh: box([0, y, 0], [500, y + 100, 2]),
    placement: multiply(about(1, 0.5), placed({ tiltX })),
  });
  // Two plates at 75 degrees either way, falling by half a degree, in a machine that keeps the columns 2 mm apart.
  const model = modelOf([
    plate('right', 0, 75),
    plate('left', -100, -75),
    { id: 'far', mesh: box([1000, 900, -200], [1001, 901, -199]) },
  ]);
  const { places } = measureStandingLiquid(model, defaultSettings).measure;
  for (const { caveats } of places) expect(caveats?.join()).toContain('groove');
  const union = await loadManifoldUnion();
  const exact = measureStandingLiquid(model, defaultSettings, {}, undefined, union);
  expect(exact.measure.places).toEqual([]);
  if (places.length > 0) expect(exact.notes.join()).toContain('they drain');
});
