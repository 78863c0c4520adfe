import { inflateSync } from 'node:zlib';
import { type Decision, keptCalculation } from '@coveline/project';
import { describe, expect, it } from 'vitest';
import { poolFinding, reviewOf, trayModel, trayOutcome, trayProject } from './box.fixture.ts';
import { buildContent } from './document/build.ts';
import { makeFile } from './make-file.ts';
import type { FileRequest } from './request.ts';

const concession: Decision = {
  kind: 'concession',
  reason: 'The lip keeps the jars on the plate.',
  because: 'function',
  controlMeasures: [{ what: 'Wipe dry', interval: 'each shift', owner: 'operator' }],
  grantedBy: 'Somebody invented',
  until: '2026-12-31',
};

function request(change: Partial<FileRequest> = {}): FileRequest {
  return {
    project: trayProject(),
    revisionId: 'A',
    model: trayModel(),
    outcome: trayOutcome(),
    review: reviewOf([poolFinding()]),
    decisions: { 'finding-1': concession },
    date: '2026-01-15',
    ...change,
  };
}

let first: ReturnType<typeof makeFile> | null = null;

/** The plain request, made once. */
function made(): ReturnType<typeof makeFile> {
  first ??= makeFile(request());
  return first;
}

describe('makeFile', () => {
  it('writes a tagged PDF that names its standard, its language and its title', async () => {
    const { pdf, warnings } = await made();
    const text = plain(pdf);
    expect(warnings).toEqual([]);
    expect(text.startsWith('%PDF-1.7')).toBe(true);
    expect(text).toContain('/StructTreeRoot');
    expect(text).toMatch(/\/Marked true/);
    expect(text).toMatch(/\/Lang ?\(en-GB\)/);
    expect(text).toContain('pdfuaid:part');
    expect(text).toContain('DisplayDocTitle true');
  });

  it('embeds one typeface in two weights and nothing else', async () => {
    const names = [...plain((await made()).pdf).matchAll(/\/BaseFont ?\/[A-Z]{6}\+([\w-]+)/g)];
    expect([...new Set(names.map(([, name]) => name.replace(/-Identity-H$/, '')))].sort()).toEqual([
      'SourceSans3-Regular',
      'SourceSans3-SemiBold',
    ]);
  });

  it('gives every picture an alternative text', async () => {
    const text = plain((await made()).pdf);
    const figures = text.match(/\/S ?\/Figure/g) ?? [];
    // The cover, three views, and a close-up and an overview of the one finding.
    expect(figures).toHaveLength(6);
    expect(text.match(/\/Alt ?[(<]/g)?.length).toBeGreaterThanOrEqual(6);
  });

  it('writes the same bytes every time', async () => {
    const [a, b] = [await made(), await makeFile(request())];
    expect(Buffer.from(a.pdf).equals(Buffer.from(b.pdf))).toBe(true);
  });

  it('takes names as names, not as markup, and writes out what the typeface lacks', async () => {
    const title = `#panic("x") *b* _i_ \`r\` $x^2$ <l> @ref \\ // [] שלום \u202egnp.exe 𝔘 ${'x'.repeat(500)}`;
    const finding = poolFinding({ title, parts: [title], why: title, caveats: [title] });
    const hostile = await makeFile(
      request({
        project: trayProject('#set page(fill: red) שלום'),
        review: reviewOf([finding]),
        decisions: { 'finding-1': { kind: 'change', note: title, option: '= Heading' } },
      }),
    );
    expect(hostile.warnings).toHaveLength(1);
    expect(hostile.warnings[0]).toMatch(/lacks \d+ characters .*U\+05/);
  });

  it('holds 200 findings', async () => {
    const findings = Array.from({ length: 200 }, (_, i) =>
      poolFinding({ id: `finding-${i}`, title: `The plate keeps ${i} mL after draining` }),
    );
    const { pdf } = await makeFile(request({ review: reviewOf(findings), decisions: {} }));
    expect((plain(pdf).match(/\/Type ?\/Page\b/g) ?? []).length).toBeGreaterThan(100);
  }, 180_000);

  it('prints kept calculations, and one sentence where what was typed gives no number', async () => {
    const project = trayProject();
    const calculations = [
      { inputs: { depth: '2 mm' }, gave: { value: 1e6, unit: 'h' } },
      { inputs: { depth: '2 kg' } },
      { calculation: 'teapot', inputs: { depth: '2 mm' } },
    ].map((change, i) =>
      keptCalculation.parse({
        id: `k${i}`,
        calculation: 'drying-time',
        title: `Puddle ${i + 1}`,
        about: { revision: 'A', finding: 'finding-1' },
        ...change,
      }),
    );
    const asked = request({ project: { ...project, calculations } });
    const { content } = await buildContent(asked);
    const [good, bad, unknown] = content.kept;
    expect(good).toMatchObject({ finding: 1, refusal: '', typed: [{ value: '2 mm' }] });
    expect(good.working?.formula.length).toBeGreaterThan(0);
    expect(good.working?.steps.length).toBeGreaterThan(0);
    expect(good.working?.result.value).toMatch(/ h$/);
    expect(good.before).toMatch(/1\D?000\D?000 h/);
    expect(bad).toMatchObject({ working: null, before: '', typed: [{ value: '2 kg' }] });
    expect(bad.refusal).toMatch(/"2 kg" is a mass: expected a length/);
    expect(unknown.refusal).toContain('There is no calculation “teapot”');
    const { pdf, warnings } = await makeFile(asked);
    expect(warnings).toEqual([]);
    expect(plain(pdf)).toContain('K2 Puddle 2');
  });

  it('names the site, with what people said of it', async () => {
    const project = { ...trayProject(), site: { A: { 'access:front': { do: 'remove' as const } } } };
    const { content } = await buildContent(request({ project }));
    expect(content.site[0]).toEqual({
      label: 'Floor',
      value: 'proposed, likely. It is the lowest point of the model; no three named feet stand there.',
    });
    expect(content.site.find((row) => row.label === 'Access side: front')?.value).toMatch(/^left out, /);
  });

  it('holds no finding at all', async () => {
    const { warnings } = await makeFile(request({ review: reviewOf([]), decisions: {} }));
    expect(warnings).toEqual([]);
  });

  it('tells how far it is and stops when asked', async () => {
    const findings = ['a', 'b', 'c'].map((id) => poolFinding({ id }));
    const stopper = new AbortController();
    const stages: string[] = [];
    const onProgress = (stage: string) => {
      stages.push(stage);
      if (stages.length === 2) stopper.abort();
    };
    const asked = request({ review: reviewOf(findings), decisions: {} });
    await expect(makeFile(asked, { signal: stopper.signal, onProgress })).rejects.toThrow(
      'The file was stopped at finding 3 of 3.',
    );
    expect(stages).toEqual(['Drawing finding 1 of 3', 'Drawing finding 2 of 3']);
  });

  it('says what is wrong with an unknown revision and with a date that is none', async () => {
    await expect(makeFile(request({ revisionId: 'Z' }))).rejects.toThrow('The project has no revision "Z".');
    await expect(makeFile(request({ date: '2026-02-30' }))).rejects.toThrow('"2026-02-30" is not a date');
  });
});

/** The PDF as text, with its object streams unpacked behind it. */
function plain(pdf: Uint8Array): string {
  const raw = Buffer.from(pdf);
  const text = raw.toString('latin1');
  const unpacked: string[] = [text];
  for (const found of text.matchAll(/\/FlateDecode[\s\S]*?stream\r?\n/g)) {
    const start = found.index + found[0].length;
    const end = text.indexOf('endstream', start);
    const dictionary = text.slice(text.lastIndexOf('obj', start), start);
    if (dictionary.includes('/Subtype /Image') || dictionary.includes('/Subtype/Image')) continue;
    unpacked.push(inflateSync(raw.subarray(start, end), { finishFlush: 2 }).toString('latin1'));
  }
  return unpacked.join('\n');
}
