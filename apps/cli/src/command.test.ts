/** The built command as a caller sees it: exit codes, standard output, standard error. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const bin = fileURLToPath(new URL('../bin/coveline.mjs', import.meta.url));
let dir = '';
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'coveline-cli-'));
});
afterAll(() => rmSync(dir, { recursive: true }));

function coveline(...args: string[]) {
  const { status, stdout, stderr } = spawnSync('node', [bin, ...args], { encoding: 'utf8', cwd: dir });
  return { status, stdout, stderr };
}

/** An open box without a lid, walls 5 mm thick, as ASCII STL: inside 90 x 60 x 30 mm, so it keeps 162 mL. */
function boxWithoutLid(): string {
  const facets: string[] = [];
  const face = (...p: number[][]) => {
    for (const [a, b, c] of [
      [0, 1, 2],
      [0, 2, 3],
    ]) {
      facets.push(
        `facet normal 0 0 0\nouter loop\n${[a, b, c].map((i) => `vertex ${p[i].join(' ')}`).join('\n')}\nendloop\nendfacet`,
      );
    }
  };
  const ring = (x0: number, y0: number, x1: number, y1: number, z: number) => [
    [x0, y0, z],
    [x1, y0, z],
    [x1, y1, z],
    [x0, y1, z],
  ];
  const outerLow = ring(0, 0, 100, 70, 0);
  const outerHigh = ring(0, 0, 100, 70, 35);
  const innerHigh = ring(5, 5, 95, 65, 35);
  const innerLow = ring(5, 5, 95, 65, 5);
  face(...[...outerLow].reverse());
  face(...innerLow);
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    face(outerLow[i], outerLow[j], outerHigh[j], outerHigh[i]);
    face(outerHigh[i], outerHigh[j], innerHigh[j], innerHigh[i]);
    face(innerHigh[i], innerHigh[j], innerLow[j], innerLow[i]);
  }
  return `solid box\n${facets.join('\n')}\nendsolid box\n`;
}

describe('coveline survey', () => {
  test('prints one JSON object and nothing else on standard output; the box keeps its 162 mL', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const { status, stdout, stderr } = coveline('survey', path, '--json', '-');
    expect(stderr).toContain('Reading');
    expect(status).toBe(0);
    const result = JSON.parse(stdout);
    expect(result.schema).toBe('coveline.survey/1');
    expect(result.model).toMatchObject({ file: 'box.stl', unit: 'mm', parts: 1, triangles: 28 });
    expect(result.model.bounds_mm).toEqual([
      [0, 0, 0],
      [100, 70, 35],
    ]);
    // Closed form 90 x 60 x 30 mm; 1 % is the demand on pools deeper than 2 mm.
    expect(Math.abs(result.measures.standingLiquid.total_mL / 162 - 1)).toBeLessThan(0.01);
  });

  test('a unit for a file without one scales it: in centimetres the box keeps a thousand times as much', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const out = join(dir, 'scaled.json');
    expect(coveline('survey', path, '--unit', 'cm', '--json', out, '--quiet').status).toBe(0);
    const { measures } = JSON.parse(readFileSync(out, 'utf8'));
    expect(Math.abs(measures.standingLiquid.total_mL / 162e3 - 1)).toBeLessThan(0.01);
  });

  test('a tilt empties the box when it stands on its side', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const { status, stdout } = coveline(
      'survey',
      path,
      '--tilt',
      'x:90',
      '--measures',
      'standingLiquid',
      '--json',
      '-',
    );
    expect(status).toBe(0);
    expect(JSON.parse(stdout).measures.standingLiquid.total_mL).toBe(0);
  });

  test.each([
    ['a missing file', () => 'nothing.step', 3],
    ['an empty file', () => write('empty.stl', ''), 3],
    ['a file of another kind', () => write('letter.step', 'Dear builder,'), 3],
  ])('%s gives exit code 3 and one line that says what and where', (_name, path, code) => {
    const { status, stdout, stderr } = coveline('survey', path(), '--quiet', '--json', '-');
    expect(status).toBe(code);
    expect(stdout).toBe('');
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(/^coveline: .{20,}\.\n$/);
  });

  test('a limit that is hit gives exit code 4', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const { status, stderr } = coveline('survey', path, '--quiet', '--time-limit', '0.001');
    expect(stderr).toMatch(/^coveline: .*time/);
    expect(status).toBe(4);
  });
});

describe('wrong usage', () => {
  test.each([
    [['survey']],
    [['survey', 'a.stl', '--up', 'left']],
    [['survey', 'a.stl', '--nonsense']],
    [['calc', 'no-such-calculation']],
    [['calc', 'drying-time']],
    [['calc', 'drying-time', 'depth']],
    [['nonsense']],
  ])('%j gives exit code 2, a sentence, and nothing on standard output', (args) => {
    const { status, stdout, stderr } = coveline(...args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr.length).toBeGreaterThan(20);
  });
});

describe('coveline review', () => {
  test('works kept calculations out anew, says why there is no number, and flags one that changed', () => {
    const folder = mkdtempSync(join(dir, 'project-'));
    writeFileSync(join(folder, 'box.stl'), boxWithoutLid());
    const leg = {
      calculation: 'dead-leg-ratio',
      inputs: { length: '65 mm', branch: '26 mm', main: '26 mm' },
    };
    const calculations = [
      { ...leg, id: 'same', title: 'Branch', gave: { value: 2.5, unit: '1' } },
      { ...leg, id: 'other', title: 'Old branch', gave: { value: 2, unit: '1' } },
      { ...leg, id: 'wrong', title: 'No branch', inputs: { length: '65 kg' } },
    ];
    const revisions = [{ id: 'A', label: 'A', file: 'box.stl' }];
    const project = { schema: 'coveline.project/1', name: 'Box (invented)', revisions, calculations };
    writeFileSync(join(folder, 'project.json'), JSON.stringify(project));
    const { status, stdout } = coveline('review', folder, '--quiet', '--json', '-');
    expect(status).toBe(0);
    const [same, other, wrong] = JSON.parse(stdout).calculations;
    expect(same).toMatchObject({
      id: 'same',
      result: { value: 2.5, unit: '1' },
      refusal: null,
      changed: false,
    });
    expect(same.working.formula).toContain('L_w/d = L/d');
    expect(other).toMatchObject({ result: { value: 2.5 }, gave: { value: 2 }, changed: true });
    expect(wrong).toMatchObject({ inputs: { length: '65 kg' }, result: null, changed: false });
    expect(wrong.refusal).toMatch(/"65 kg" is a mass: expected a length/);
    const { stdout: words } = coveline('review', folder, '--quiet');
    expect(words).toContain("Branch: ratio by the rule's datum 2.5\n");
    expect(words).toContain("Old branch: ratio by the rule's datum 2.5 (when it was kept: 2)");
  });

  test('packs of a file are judged by and traced; one that is not sound is refused in a sentence', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const formats = readFileSync(new URL('../../../docs/formats.md', import.meta.url), 'utf8');
    const [, example] = /^## Packs[\s\S]*?```json\n([\s\S]*?)```/m.exec(formats)!;
    const sound = write('house.json', example);
    const { status, stdout } = coveline('review', path, '--quiet', '--pack', sound, '--json', '-');
    expect(status).toBe(0);
    const { requirements, trace } = JSON.parse(stdout);
    const lines = requirements.map((r: { requirement: string }) => r.requirement);
    expect(lines).toContain('house-radius');
    const { coverage, rows } = trace;
    expect(rows.map((r: { requirement: string }) => r.requirement)).toEqual(lines);
    const counts = Object.values<number>(coverage);
    expect(counts.reduce((sum, n) => sum + n)).toBe(lines.length);

    const bad = write('bad.json', example.replace('"mm"', '"furlongz"'));
    const refused = coveline('review', path, '--quiet', '--pack', bad);
    expect(refused.status).toBe(3);
    expect(refused.stderr).toMatch(/bad\.json": requirements\[1\]\.limits\[1\]\.unit: a unit/);
    expect(refused.stderr.trim().split('\n')).toHaveLength(1);
  });

  test('the survey names the site that it went by', () => {
    const path = join(dir, 'box.stl');
    writeFileSync(path, boxWithoutLid());
    const { stdout } = coveline('survey', path, '--quiet', '--measures', 'flatFaces', '--json', '-');
    expect(JSON.parse(stdout).site).toMatchObject({ floor_mm: 0, nozzles: [] });
    const words = coveline('survey', path, '--quiet', '--measures', 'flatFaces').stdout;
    expect(words).toContain('Site, proposed from geometry and names: floor at 0 mm');
  });
});

describe('coveline calc', () => {
  test('units in the values are understood and echoed', () => {
    const { status, stdout } = coveline('calc', 'drying-time', 'depth=0.05in', 'room=68F', '--json', '-');
    expect(status).toBe(0);
    const { working, understood } = JSON.parse(stdout);
    expect(understood[0]).toContain('1.27 mm');
    expect(working.inputs[1].value).toBeCloseTo(20, 9);
  });

  test('the list names every calculation that can be asked for help', () => {
    const { stdout } = coveline('calc');
    expect(stdout).toContain('drying-time');
    expect(coveline('calc', 'drying-time', '--help').stdout).toContain('Equation');
  });
});

function write(name: string, text: string): string {
  writeFileSync(join(dir, name), text);
  return join(dir, name);
}
