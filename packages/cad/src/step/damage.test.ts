/** Damaged and hostile STEP files: always one sentence or a model with a warning, never silence, never a hang. */
import type { Model } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { boxFile, StepText } from '../../fixtures/stepText.ts';
import { CadError } from '../error.ts';
import { signedVolume } from '../mesh/check.ts';
import { readModel } from '../read.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const oneSentence = /^[^\n]+\.$/;

async function attempt(data: Uint8Array): Promise<Model | CadError> {
  try {
    return await readModel(data, 'part.step');
  } catch (error) {
    // Anything but a CadError is a fault of ours and fails the test.
    if (!(error instanceof CadError)) throw error;
    expect(error.message).toMatch(oneSentence);
    return error;
  }
}

const refusal = async (text: string): Promise<CadError> => {
  const result = await attempt(bytes(text));
  if (!(result instanceof CadError)) expect.fail('it was read');
  return result;
};

const warned = (model: Model) => model.notes.some((note) => note.level === 'warning');

describe('what is not a STEP file any more', () => {
  it('is told apart: empty, unknown, cut, without data, without bodies', async () => {
    const unknown = await readModel(bytes('hello'), 'notes.txt').catch((error) => error);
    expect(unknown.code).toBe('unknownFormat');
    expect(unknown.message).toBe(
      '"notes.txt" is none of the formats that can be read; give a STEP, 3MF, GLB, STL, OBJ file.',
    );
    const empty = await readModel(new Uint8Array(0), 'part.step').catch((error) => error);
    expect([empty.code, empty.message]).toEqual([
      'empty',
      '"part.step" is empty (0 bytes); export or copy it again.',
    ]);
    const text = boxFile();
    expect((await refusal(text.slice(0, text.length >> 1))).message).toMatch(
      /^The STEP file stops in the middle of its DATA section after \d+ entities; copy or export it again\.$/,
    );
    expect((await refusal('ISO-10303-21;\nHEADER;\nENDSEC;\nEND-ISO-10303-21;\n')).code).toBe('damaged');
    expect((await refusal('ISO-10303-21;\nHEADER;\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n')).code).toBe(
      'noGeometry',
    );
    const step = new StepText();
    step.product(
      'Sketch',
      step.representation([step.point(1, 2, 3)], step.context(), 'SHAPE_REPRESENTATION'),
    );
    expect((await refusal(step.text())).code).toBe('noGeometry');
  });

  it('is read by its content, whatever its name says', async () => {
    const model = await readModel(bytes(boxFile()), 'part.stl');
    expect(model.parts).toHaveLength(1);
    const random = new Uint8Array(5000).map((_, i) => (i * 7919 + 13) % 251);
    const error = await readModel(random, 'part.step').catch((e) => e);
    expect(error).toBeInstanceOf(CadError);
  });

  it('names the files of an assembly whose parts stand elsewhere', async () => {
    const step = new StepText();
    const axes = step.axes(0, 0, 0);
    step.product('Machine', step.representation([axes], step.context(), 'SHAPE_REPRESENTATION'));
    step.add(`DOCUMENT_FILE('leg.stp','','',#1,'',$)`);
    expect((await refusal(step.text())).message).toBe(
      'The STEP file is an assembly whose parts stand in other files (leg.stp); export the assembly as one file.',
    );
  });
});

describe('numbers that hang kernels', () => {
  it.each(['1.E400', '-1.E400', '1.E300', '1.E12', '123456789012.'])(
    'refuses the coordinate %s',
    async (number) => {
      const text = boxFile().replace(/CARTESIAN_POINT\('',\(10\./, `CARTESIAN_POINT('',(${number}`);
      const error = await refusal(text);
      expect(error.code).toBe('hostile');
      expect(error.message).toMatch(
        new RegExp(
          `^The only body in the STEP file cannot be read because: Body "Box" \\(#\\d+\\): #\\d+ holds the number ${number.replace('.', '\\.')}, which no machine can have; export the file again\\.$`,
        ),
      );
    },
  );

  it('refuses vectors without length', async () => {
    const error = await refusal(boxFile().replace(/(VECTOR\('',#\d+,)1\.\)/, '$10.)'));
    expect(error.message).toContain('is a vector without length');
  });

  it('refuses entities that refer to themselves', async () => {
    const error = await refusal(boxFile().replace(/#(\d+)=EDGE_LOOP\('',\(#\d+/, "#$1=EDGE_LOOP('',(#$1"));
    expect(error.code).toBe('hostile');
    expect(error.message).toMatch(/#\d+ refers to itself in a loop/);
  });

  it('keeps the sound bodies and warns of the one that is not read', async () => {
    const step = new StepText();
    const context = step.context();
    step.product('Good', step.representation([step.box(1, 2, 3)], context));
    step.product('Bad', step.representation([step.box(4, 77, 6)], context));
    const model = await readModel(bytes(step.text().replace('77.', '1.E400')), 'two.step');
    expect(model.parts.map((part) => part.name)).toEqual(['Good']);
    expect(model.notes).toHaveLength(1);
    expect(model.notes[0].level).toBe('warning');
    expect(model.notes[0].text).toMatch(/^Body "Bad" \(#\d+\) is left out: #\d+ holds the number 1\.E400/);
  });
});

describe('losses', () => {
  it('names a reference that leads nowhere', async () => {
    const text = boxFile().replace(/(CLOSED_SHELL\('',\(#\d+,)#\d+/, '$1#99999');
    const result = await attempt(bytes(text));
    const said =
      result instanceof CadError ? result.message : result.notes.map((note) => note.text).join(' ');
    expect(said).toContain('#99999');
  });

  it('tells a face that the shell does not list any more by the hole that it leaves', async () => {
    const text = boxFile().replace(/(CLOSED_SHELL\('',\(#\d+),#\d+/, '$1');
    const model = (await attempt(bytes(text))) as Model;
    expect(warned(model)).toBe(true);
    expect(model.notes.map((note) => note.text).join()).toMatch(
      /left 1 hole in it, closed here with \d+ mm²/,
    );
    const [shape] = model.shapes;
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(6000, 6);
  });

  it('tells a component whose place is lost', async () => {
    const step = new StepText();
    const context = step.context();
    const axes = step.axes(0, 0, 0);
    const to = step.axes(5, 0, 0);
    const leaf = step.representation([axes, step.box(1, 1, 1)], context);
    const root = step.representation([to], context, 'SHAPE_REPRESENTATION');
    const child = { definition: step.product('Leaf', leaf), representation: leaf };
    const parent = { definition: step.product('Root', root), representation: root };
    step.component(parent, child, axes, to);
    const cut = step.text().replace(/#\d+=CONTEXT_DEPENDENT_SHAPE_REPRESENTATION[^;]*;\n/, '');
    const model = (await attempt(bytes(cut))) as Model;
    expect(model.notes.map((note) => note.text)).toEqual([
      'The place of "Leaf" in "Root" is missing from the file; it stands at the origin of "Root".',
    ]);
  });

  it('shows bodies that have lost their product', async () => {
    const cut = boxFile().replace(/#\d+=SHAPE_DEFINITION_REPRESENTATION[^;]*;\n/, '');
    const model = (await attempt(bytes(cut))) as Model;
    expect(model.parts).toHaveLength(1);
    expect(warned(model)).toBe(true);
  });
});

/** Three products, six placed bodies, colours, two levels. */
function corpusFile(): string {
  const step = new StepText();
  const context = step.context();
  const origin = step.axes(0, 0, 0);
  const body = step.box(10, 20, 30);
  step.paint(body, 0.2, 0.4, 0.6);
  const leaf = step.representation([origin, body], context);
  const product = { definition: step.product('Leaf', leaf), representation: leaf };
  const places = [0, 1, 2].map((i) => step.axes(50 * i, 0, 0, [0, 0, 1], [0, 1, 0]));
  const middle = step.representation(places, context, 'SHAPE_REPRESENTATION');
  const middleProduct = { definition: step.product('Middle', middle), representation: middle };
  for (const place of places) step.component(middleProduct, product, origin, place);
  const spots = [0, 1].map((i) => step.axes(0, 0, 100 * i));
  const root = step.representation(spots, context, 'SHAPE_REPRESENTATION');
  const rootProduct = { definition: step.product('Root', root), representation: root };
  for (const spot of spots) step.component(rootProduct, middleProduct, origin, spot);
  return step.text();
}

/** Mulberry32, a small seeded generator (public domain). */
function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

type Damage = (text: string, pick: (n: number) => number) => Uint8Array;

const damages: Record<string, Damage> = {
  'a flipped bit': (text, pick) => {
    const out = bytes(text);
    out[pick(out.length)] ^= 1 << pick(8);
    return out;
  },
  'a dropped line': (text, pick) => {
    const lines = text.split('\n');
    lines.splice(pick(lines.length), 1);
    return bytes(lines.join('\n'));
  },
  'a dangling reference': (text, pick) => {
    const references = [...text.matchAll(/#\d+(?=[,)])/g)];
    const { index } = references[pick(references.length)];
    return bytes(`${text.slice(0, index)}#9${text.slice(index + 1)}`);
  },
  'a cut end': (text, pick) => bytes(text.slice(0, pick(text.length - 20))),
};

describe.each(Object.keys(damages))('%s', (name) => {
  it('is never silent when bodies or faces are lost (seeds 1 to 40)', async () => {
    const text = corpusFile();
    const whole = (await attempt(bytes(text))) as Model;
    expect(whole.parts).toHaveLength(6);
    const facesOf = (model: Model) =>
      model.parts.reduce((n, part) => n + (model.shapes[part.shape].cad?.faces.length ?? 0), 0);
    const silent: number[] = [];
    for (let seed = 1; seed <= 40; seed++) {
      const next = random(seed);
      const result = await attempt(damages[name](text, (n) => Math.floor(next() * n)));
      if (result instanceof CadError) continue;
      const lost = result.parts.length < whole.parts.length || facesOf(result) < facesOf(whole);
      if (lost && !warned(result)) silent.push(seed);
    }
    expect(silent).toEqual([]);
  }, 60_000);
});
