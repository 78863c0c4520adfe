import { bounds, type Model } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { boxFile, StepText } from '../../fixtures/stepText.ts';
import { openEdges, signedVolume } from '../mesh/check.ts';
import { readModel } from '../read.ts';

const read = (step: StepText | string): Promise<Model> =>
  readModel(typeof step === 'string' ? new TextEncoder().encode(step) : step.bytes(), 'test.step');

const failure = async (text: string) =>
  read(text).then(
    () => expect.fail('it was read'),
    (error) => error as { code: string; message: string },
  );

describe('a box written by hand', () => {
  it('has six planes, twelve outer edges, its size, and a closed mesh wound from the air', async () => {
    const model = await read(boxFile('Lid'));
    expect(model.unit).toBe('mm');
    expect(model.notes).toEqual([]);
    expect(model.parts.map((part) => [part.id, part.name, part.assembly])).toEqual([['Lid', 'Lid', []]]);
    const [shape] = model.shapes;
    expect(bounds(model)).toEqual([
      [0, 0, 0],
      [10, 20, 30],
    ]);
    expect(shape.triangles.length / 3).toBe(12);
    expect(openEdges(shape.triangles, shape.positions.length / 3)).toBe(0);
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(6000, 9);
    expect(shape.cad?.faces.map((face) => face.kind)).toEqual(Array(6).fill('plane'));
    const top = shape.cad?.faces.find((face) => face.axis?.direction[2] === 1);
    expect(top?.axis?.origin[2]).toBe(30);
    expect(shape.cad?.edges).toHaveLength(12);
    for (const edge of shape.cad?.edges ?? []) {
      expect(edge.turn).toBe('convex');
      expect(edge.airAngle_deg).toBeCloseTo(270, 9);
      expect([10, 20, 30].some((length) => Math.abs(edge.length_mm - length) < 1e-9)).toBe(true);
      expect(edge.points).toHaveLength(6);
    }
  });

  it('is the same shape, hash and all, when it is read again', async () => {
    const one = await read(boxFile());
    const two = await read(boxFile('Other name'));
    expect(two.shapes[0].hash).toBe(one.shapes[0].hash);
  });

  it('is turned over where it was written inside out', async () => {
    const text = boxFile().replaceAll(/(ADVANCED_FACE\(.*),\.T\.\)/g, '$1,.F.)');
    const flipped = text.replaceAll(/(FACE_OUTER_BOUND\(.*),\.T\.\)/g, '$1,.F.)');
    const model = await read(flipped);
    const [shape] = model.shapes;
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(6000, 9);
    expect(shape.cad?.edges.every((edge) => edge.turn === 'convex')).toBe(true);
  });
});

describe('units', () => {
  it('reads inches written as a conversion of millimetres', async () => {
    const step = new StepText();
    const context = step.context(step.inch());
    step.product('Inch box', step.representation([step.box(1, 2, 3)], context));
    const model = await read(step);
    expect(model.unit).toBe('in');
    const [, high] = bounds(model);
    for (const [k, size] of [25.4, 50.8, 76.2].entries()) expect(high[k]).toBeCloseTo(size, 6);
  });

  it.each([
    ['.CENTI.', 'cm', 10],
    ['$', 'm', 1000],
    ['.MILLI.', 'mm', 1],
  ] as const)('reads SI lengths with the prefix %s', async (prefix, unit, factor) => {
    const step = new StepText();
    const length = step.add(`(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(${prefix},.METRE.))`);
    step.product('Box', step.representation([step.box(0.5, 1, 2)], step.context(length)));
    const model = await read(step);
    expect(model.unit).toBe(unit);
    const [, high] = bounds(model);
    for (const [k, size] of [0.5, 1, 2].entries()) expect(high[k]).toBeCloseTo(size * factor, 6);
  });

  it('says so where the file states no length unit', async () => {
    const step = new StepText();
    const context = step.add("REPRESENTATION_CONTEXT('','')");
    step.product('Box', step.representation([step.box(1, 1, 1)], context));
    const model = await read(step);
    expect(model.notes.map((note) => note.text).join()).toContain('does not state the length unit');
  });
});

/** A plate with four posts, one product used four times, as an assembly in an assembly. */
function table(): StepText {
  const step = new StepText();
  const context = step.context();
  const origin = step.axes(0, 0, 0);
  const post = step.representation([origin, step.box(10, 10, 100)], context);
  const postProduct = { definition: step.product('Post', post), representation: post };
  const places = [
    step.axes(0, 0, 0),
    step.axes(200, 0, 0),
    step.axes(200, 100, 0, [0, 0, 1], [0, 1, 0]),
    step.axes(0, 100, 0, [1, 0, 0], [0, 0, 1]),
  ];
  const frame = step.representation(places, context, 'SHAPE_REPRESENTATION');
  const frameProduct = { definition: step.product('Frame', frame), representation: frame };
  for (const place of places) step.component(frameProduct, postProduct, origin, place);
  const up = step.axes(0, 0, 500);
  const root = step.representation([up], context, 'SHAPE_REPRESENTATION');
  const rootProduct = { definition: step.product('Machine', root), representation: root };
  const own = step.axes(0, 0, 0);
  step.component(rootProduct, frameProduct, own, up);
  return step;
}

describe('assemblies', () => {
  it('keeps a repeated product as one shape, with names and placements', async () => {
    const model = await read(table());
    expect(model.shapes).toHaveLength(1);
    expect(model.parts.map((part) => part.id)).toEqual([
      'Machine/Frame/Post',
      'Machine/Frame/Post#2',
      'Machine/Frame/Post#3',
      'Machine/Frame/Post#4',
    ]);
    expect(model.parts[0].assembly).toEqual(['Machine', 'Frame']);
    // Columns x, y, z, origin. The third post is turned a quarter about z, the fourth lies along x.
    expect([...model.parts[2].placement]).toEqual([0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1, 0, 200, 100, 500, 1]);
    expect([...model.parts[3].placement]).toEqual([0, 0, 1, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 100, 500, 1]);
  });

  it('reads the relationship also where its two sides are swapped', async () => {
    const straight = await read(table());
    const text = table()
      .text()
      .replaceAll(
        /REPRESENTATION_RELATIONSHIP\('','',(#\d+),(#\d+)\)/g,
        "REPRESENTATION_RELATIONSHIP('','',$2,$1)",
      )
      .replaceAll(
        /ITEM_DEFINED_TRANSFORMATION\('','',(#\d+),(#\d+)\)/g,
        "ITEM_DEFINED_TRANSFORMATION('','',$2,$1)",
      );
    const swapped = await read(text);
    expect(swapped.parts.map((part) => [...part.placement])).toEqual(
      straight.parts.map((part) => [...part.placement]),
    );
  });

  it('makes a part of each body of a product', async () => {
    const step = new StepText();
    const context = step.context();
    const bodies = [step.box(1, 1, 1, 'left'), step.box(2, 2, 2, ''), step.box(3, 3, 3, '')];
    step.product('Pair', step.representation(bodies, context));
    const model = await read(step);
    expect(model.parts.map((part) => part.id)).toEqual(['Pair/left', 'Pair/Pair', 'Pair/Pair#2']);
  });

  it('repeats, mirrors and scales what a mapped item maps', async () => {
    const step = new StepText();
    const context = step.context();
    const origin = step.axes(0, 0, 0);
    const source = step.representation([origin, step.box(10, 20, 30)], context);
    const map = step.add(`REPRESENTATION_MAP(${origin},${source})`);
    const plain = step.add(`MAPPED_ITEM('',${map},${step.axes(100, 0, 0)})`);
    const mirror = step.add(
      `CARTESIAN_TRANSFORMATION_OPERATOR_3D('',${step.direction(1, 0, 0)},${step.direction(0, -1, 0)},${step.point(0, 0, 0)},2.,${step.direction(0, 0, 1)})`,
    );
    const mirrored = step.add(`MAPPED_ITEM('',${map},${mirror})`);
    const representation = step.representation([plain, mirrored], context, 'SHAPE_REPRESENTATION');
    step.product('Twins', representation);
    const model = await read(step);
    expect(model.parts).toHaveLength(2);
    expect(model.shapes).toHaveLength(2);
    const [low, high] = bounds(model);
    expect(low).toEqual([0, -40, 0]);
    expect(high).toEqual([110, 20, 60]);
    for (const shape of model.shapes) {
      expect(openEdges(shape.triangles, shape.positions.length / 3)).toBe(0);
      expect(shape.cad?.edges.every((edge) => edge.turn === 'convex')).toBe(true);
    }
    expect(model.shapes.map((s) => signedVolume(s.positions, s.triangles))).toEqual([6000, 48000]);
  });

  it('takes a product that is mapped into another for its member, not for a machine of its own', async () => {
    const step = new StepText();
    const context = step.context();
    const origin = step.axes(0, 0, 0);
    const pin = step.representation([origin, step.box(1, 1, 5)], context);
    step.product('Pin', pin);
    const map = step.add(`REPRESENTATION_MAP(${origin},${pin})`);
    const uses = [0, 10].map((x) => step.add(`MAPPED_ITEM('',${map},${step.axes(x, 0, 0)})`));
    step.product('Plate', step.representation([step.box(20, 20, 1), ...uses], context));
    const model = await read(step);
    expect(model.parts.map((part) => [part.id, part.placement[12]])).toEqual([
      ['Plate', 0],
      ['Plate/Pin', 0],
      ['Plate/Pin#2', 10],
    ]);
  });

  it('shows a body once where its product names two representations that state the same', async () => {
    const step = new StepText();
    const context = step.context();
    const axes = step.axes(0, 0, 0);
    const shape = step.representation([axes], context, 'SHAPE_REPRESENTATION');
    const solid = step.representation([axes, step.box(1, 2, 3)], context);
    step.product('Lid', shape);
    step.add(`SHAPE_REPRESENTATION_RELATIONSHIP('','',${shape},${solid})`);
    const definition = /#(\d+)=PRODUCT_DEFINITION_SHAPE/.exec(step.text())?.[1];
    step.add(`SHAPE_DEFINITION_REPRESENTATION(#${definition},${solid})`);
    const model = await read(step);
    expect(model.parts.map((part) => part.id)).toEqual(['Lid']);
  });

  it('passes over empty assemblies, however often they are repeated', async () => {
    const step = new StepText();
    const context = step.context();
    const axes = step.axes(0, 0, 0);
    const leaf = step.representation([axes], context, 'SHAPE_REPRESENTATION');
    let below = { definition: step.product('Leaf', leaf), representation: leaf };
    for (let level = 0; level < 40; level++) {
      const representation = step.representation([axes], context, 'SHAPE_REPRESENTATION');
      const above = { definition: step.product(`Level ${level}`, representation), representation };
      for (let n = 0; n < 3; n++) step.component(above, below, axes, axes);
      below = above;
    }
    step.product('Real', step.representation([step.box(1, 1, 1)], context));
    const model = await read(step);
    expect(model.parts.map((part) => part.id)).toEqual(['Real']);
  });

  it('refuses an assembly that contains itself', async () => {
    const step = new StepText();
    const context = step.context();
    const axes = step.axes(0, 0, 0);
    const one = step.representation([axes, step.box(1, 1, 1)], context);
    const two = step.representation([axes], context, 'SHAPE_REPRESENTATION');
    const a = { definition: step.product('A', one), representation: one };
    const b = { definition: step.product('B', two), representation: two };
    step.component(a, b, axes, axes);
    step.component(b, a, axes, axes);
    const error = await failure(step.text());
    expect(error.code).toBe('hostile');
    expect(error.message).toMatch(/^The assembly "[AB]" \(#\d+\) contains itself/);
  });

  it('refuses an assembly that multiplies beyond all machines', async () => {
    const step = new StepText();
    const context = step.context();
    const axes = step.axes(0, 0, 0);
    const leaf = step.representation([axes, step.box(1, 1, 1)], context);
    let below = { definition: step.product('Leaf', leaf), representation: leaf };
    for (let level = 0; level < 12; level++) {
      const representation = step.representation([axes], context, 'SHAPE_REPRESENTATION');
      const above = { definition: step.product(`Level ${level}`, representation), representation };
      for (let n = 0; n < 8; n++) step.component(above, below, axes, axes);
      below = above;
    }
    const error = await failure(step.text());
    expect(error.code).toBe('tooLarge');
  });
});

describe('faceted bodies', () => {
  it('are read from poly loops', async () => {
    const step = new StepText();
    const context = step.context();
    const points = [step.point(0, 0, 0), step.point(10, 0, 0), step.point(0, 10, 0), step.point(0, 0, 10)];
    const sides = [
      [0, 2, 1],
      [0, 1, 3],
      [0, 3, 2],
      [1, 2, 3],
    ];
    const normals = [
      [0, 0, -1],
      [0, -1, 0],
      [-1, 0, 0],
      [1, 1, 1],
    ];
    const planes = normals.map((normal, k) => {
      const x = k === 3 ? 10 : 0;
      return step.add(`PLANE('',${step.axes(x, 0, 0, normal, k === 2 ? [0, 1, 0] : [1, 0, 0])})`);
    });
    const faces = sides.map((side, k) => {
      const loop = step.add(`POLY_LOOP('',(${side.map((i) => points[i]).join()}))`);
      const bound = step.add(`FACE_OUTER_BOUND('',${loop},.T.)`);
      return step.add(`FACE_SURFACE('',(${bound}),${planes[k]},.T.)`);
    });
    const shell = step.add(`CLOSED_SHELL('',(${faces.join()}))`);
    const body = step.add(`FACETED_BREP('',${shell})`);
    step.product('Wedge', step.representation([body], context, 'FACETED_BREP_SHAPE_REPRESENTATION'));
    const model = await read(step);
    const [shape] = model.shapes;
    expect(shape.triangles.length / 3).toBe(4);
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(1000 / 6, 6);
    expect(shape.cad?.faces.map((face) => face.kind)).toEqual(Array(4).fill('plane'));
  });
});

describe('surface models', () => {
  it('are read as one part, with a warning that they are no solid', async () => {
    const step = new StepText();
    const context = step.context();
    step.box(10, 20, 30);
    const faces = [...step.text().matchAll(/#(\d+)=ADVANCED_FACE/g)].map(([, id]) => `#${id}`);
    const shell = step.add(`OPEN_SHELL('',(${faces.slice(1).join()}))`);
    const surface = step.add(`SHELL_BASED_SURFACE_MODEL('Hood',(${shell}))`);
    const representation = step.representation([surface], context, 'MANIFOLD_SURFACE_SHAPE_REPRESENTATION');
    step.product('Hood', representation);
    const model = await read(step);
    expect(model.parts.map((part) => part.name)).toEqual(['Hood']);
    const [shape] = model.shapes;
    expect(shape.cad?.faces).toHaveLength(5);
    expect(shape.cad?.edges.filter((edge) => edge.turn === 'open')).toHaveLength(4);
    expect(openEdges(shape.triangles, shape.positions.length / 3)).toBe(4);
    expect(model.notes.map((note) => note.level)).toEqual(['warning', 'warning']);
    expect(model.notes.map((note) => note.text).join(' ')).toContain(
      'it is a surface without thickness and with 4 free edges',
    );
  });
});

describe('colours', () => {
  it('takes the values of the file as sRGB, on the body, its faces or its shell', async () => {
    const step = new StepText();
    const context = step.context();
    const painted = step.box(1, 1, 1);
    step.paint(painted, 0.75, 0.5, 0.25);
    step.product('Painted', step.representation([painted], context));
    step.product('Bare', step.representation([step.box(1, 1, 2)], context));
    const model = await read(step);
    expect(model.parts[0].color).toEqual([0.75, 0.5, 0.25]);
    expect(model.parts[1].color).toBeUndefined();
  });

  it('gives a body the colour that most of its faces wear', async () => {
    const step = new StepText();
    const context = step.context();
    const box = step.box(1, 1, 1);
    const faces = [...step.text().matchAll(/#(\d+)=ADVANCED_FACE/g)].map(([, id]) => `#${id}`);
    for (const face of faces.slice(0, 2)) step.paint(face, 1, 0, 0);
    for (const face of faces.slice(2)) step.paint(face, 0, 0.25, 1);
    step.product('Striped', step.representation([box], context));
    const model = await read(step);
    expect(model.parts[0].color).toEqual([0, 0.25, 1]);
  });
});

describe('text', () => {
  it('reads names in every encoding of Part 21', async () => {
    for (const [written, name] of [
      ["Deckel ''oben''", "Deckel 'oben'"],
      ['\\X2\\00C4006E\\X0\\dern', 'Ändern'],
      ['gr\\X\\FC\\S\\_e', 'grüße'],
      ['Größe', 'Größe'],
      ['\\X4\\0001F52C\\X0\\', '🔬'],
    ]) {
      const model = await read(boxFile(written));
      expect(model.parts[0].name).toBe(name);
    }
  });

  it('reads comments, line breaks and blanks wherever Part 21 allows them', async () => {
    const text = boxFile()
      .replaceAll('=', " =\r\n  /* a comment; with (all) kinds 'of */ ")
      .replaceAll(',', ' ,\n ');
    const model = await read(text);
    expect(model.shapes[0].triangles.length / 3).toBe(12);
  });
});
