/** The API from outside: requests in, answers out, on an embedded database in memory. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Job,
  job,
  machine,
  machineSummary,
  type OptionsAnswer,
  problem,
  type ReviewAnswer,
  type SiteAnswer,
  uploadAnswer,
} from '@coveline/api';
import { decodeModel, triangleCount, unpackFloats } from '@coveline/model';
import { assemble, findSurvey, openInMemory, type Store, storeSurvey } from '@coveline/store';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { boxObj, dishObj } from '../test-data/box-obj.ts';
import { multipartBody, multipartBytes } from '../test-data/multipart-body.ts';
import { onePixel } from '../test-data/one-pixel.ts';
import type { App } from './app-type.ts';
import { start } from './serve.ts';

// Child processes on a busy machine of two cores.
vi.setConfig({ testTimeout: 90_000 });

let dataDir: string;
let store: Store;
let app: App;
let close: () => Promise<void>;

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), 'coveline-'));
  store = await assemble(dataDir, await openInMemory());
  const options = { by: 'Reviewer', webDir: join(dataDir, 'no-web'), upload_MB: 1 };
  ({ app, close } = await start(store, options, true));
}, 60_000);

afterAll(async () => {
  await close();
  await rm(dataDir, { recursive: true });
});

const get = (url: string, headers = {}) => app.inject({ url, headers });
const post = (url: string, payload?: object) =>
  app.inject({ method: 'POST', url, ...(payload && { payload }) });

async function newMachine(name = 'Invented mixer'): Promise<string> {
  const answer = await post('/api/machines', { name });
  return machineSummary.parse(answer.json()).id;
}

async function upload(to: string, name: string, content: string, fields: Record<string, string> = {}) {
  return await app.inject({
    method: 'POST',
    url: `/api/machines/${to}/revisions`,
    ...multipartBody({ name, content }, fields),
  });
}

async function jobOf(id: string): Promise<Job> {
  const jobs = (await get('/api/jobs')).json() as unknown[];
  return jobs.map((each) => job.parse(each)).find((each) => each.id === id)!;
}

async function finished(id: string): Promise<Job> {
  await expect.poll(async () => (await jobOf(id)).state, { timeout: 60_000 }).not.toMatch(/waiting|running/);
  return await jobOf(id);
}

/** A machine with a surveyed box, and the address of its revision. */
async function surveyed(
  content = boxObj(100, 60, 30),
): Promise<{ id: string; revision: string; base: string }> {
  const id = await newMachine();
  const answer = uploadAnswer.parse((await upload(id, 'box.obj', content)).json());
  expect(await finished(answer.job.id)).toMatchObject({ state: 'done', error: null });
  return { id, revision: answer.revision, base: `/api/machines/${id}/revisions/${answer.revision}` };
}

describe('machines', () => {
  test('names become addresses, and namesakes get a number', async () => {
    const first = await newMachine('Käse-Füller 2');
    const second = await newMachine('Käse-Füller 2');
    expect([first, second]).toEqual(['kase-fuller-2', 'kase-fuller-2-2']);
    const list = (await get('/api/machines')).json() as { id: string }[];
    expect(list.map((m) => m.id)).toEqual(expect.arrayContaining([first, second]));
  });

  test('unknown machine, unknown route, wrong body: one sentence each', async () => {
    const answers = [
      [await get('/api/machines/nobody'), 404, 'There is no machine "nobody".'],
      [await get('/api/nothing'), 404, 'There is no GET /api/nothing: see /api/openapi.json.'],
      [await post('/api/machines', { name: '' }), 400, /^"name" is not as expected: .*\.$/],
      [await post('/api/machines/nobody/undo'), 404, 'There is no machine "nobody".'],
      [await post('/api/jobs/nobody/cancel'), 404, 'There is no job "nobody".'],
      [
        await app.inject({
          method: 'POST',
          url: '/api/machines',
          payload: '{',
          headers: { 'content-type': 'application/json' },
        }),
        400,
        /JSON/,
      ],
    ] as const;
    for (const [answer, status, message] of answers) {
      expect(answer.statusCode).toBe(status);
      const said = problem.parse(answer.json()).message;
      if (typeof message === 'string') expect(said).toBe(message);
      else expect(said).toMatch(message);
    }
  });
});

describe('kept calculations', () => {
  test('are kept as they were typed, renamed, removed and brought back, each in words', async () => {
    const id = await newMachine();
    const send = (kept: object | null) =>
      post(`/api/machines/${id}/commands`, { do: 'setCalculation', calculation: 'c1', kept });
    const kept = { calculation: 'pipe-flow', title: 'Shear', inputs: { bore: '2 kg', flow: '1,5 m³/h' } };
    const first = machine.parse((await send(kept)).json());
    const expected = { id: 'c1', ...kept, note: '', locale: 'en' };
    expect(first.project.calculations).toEqual([expected]);
    expect(first.canUndo).toBe('Keep the calculation "Shear"');
    const renamed = machine.parse((await send({ ...kept, title: 'Shear in the line' })).json());
    expect(renamed.canUndo).toBe('Rename the calculation "Shear" to "Shear in the line"');
    const removed = machine.parse((await send(null)).json());
    expect(removed.project.calculations).toEqual([]);
    await post(`/api/machines/${id}/undo`);
    const back = machine.parse((await post(`/api/machines/${id}/undo`)).json());
    expect(back.project.calculations).toEqual([expected]);
  });

  test('a language that is none and a text that is too long get one sentence', async () => {
    const id = await newMachine();
    const kept = { calculation: 'pipe-flow', title: 'Shear' };
    for (const wrong of [{ locale: 'en-a' }, { inputs: { bore: '1'.repeat(100_001) } }, { title: '' }]) {
      const calculation = { ...kept, ...wrong };
      const answer = await post(`/api/machines/${id}/commands`, {
        do: 'setCalculation',
        calculation: 'c1',
        kept: calculation,
      });
      expect(answer.statusCode).toBe(400);
      expect(problem.parse(answer.json()).message).toMatch(/^"kept\..*" is not as expected: .*\.$/);
    }
  });
});

describe('the site', () => {
  test('is proposed from the model, goes into the survey, and follows what people say of it', async () => {
    const { id, revision, base } = await surveyed();
    const first = (await get(`${base}/site`)).json() as SiteAnswer;
    const floor = first.proposals.find((p) => p.id === 'floor');
    expect(floor).toMatchObject({ item: { what: 'floor', height_mm: 0 } });
    expect(first.surveyed).toMatchObject({ floor_mm: 0 });
    const change = { do: 'set', item: { what: 'floor', height_mm: -120 } };
    const said = await post(`/api/machines/${id}/commands`, {
      do: 'setSite',
      revision,
      item: 'floor',
      change,
    });
    expect(machine.parse(said.json())).toMatchObject({ canUndo: 'Set the floor "floor" of the site' });
    const again = job.parse((await post(`${base}/survey`)).json());
    expect(await finished(again.id)).toMatchObject({ state: 'done' });
    expect(((await get(`${base}/site`)).json() as SiteAnswer).surveyed).toMatchObject({ floor_mm: -120 });
    const zero = { do: 'set', item: { what: 'access', outward: [0, 0, 0] } };
    const wrong = await post(`/api/machines/${id}/commands`, {
      do: 'setSite',
      revision,
      item: 'x',
      change: zero,
    });
    expect(wrong.statusCode).toBe(400);
  });
});

describe('the whole way', () => {
  test('upload, survey, review, decide, undo, redo; everything is there after it is read again', async () => {
    const { id, revision, base } = await surveyed();
    const read = machine.parse((await get(`/api/machines/${id}`)).json());
    expect(read.revisions[0]).toMatchObject({
      id: revision,
      label: 'A',
      file: 'box.obj',
      up: 'z',
      parts: 1,
      triangles: 12,
      hasFile: false,
    });
    expect(read.revisions[0].surveyedAt).not.toBeNull();

    const model = await get(`${base}/model`);
    expect(triangleCount(decodeModel(model.rawPayload))).toBe(12);
    const etag = model.headers.etag as string;
    expect((await get(`${base}/model`, { 'if-none-match': etag })).statusCode).toBe(304);
    const survey = (await get(`${base}/survey`)).json();
    expect(Object.keys(survey.measures)).toContain('flatFaces');
    expect((await get(`${base}/fields/flatFaces`)).rawPayload.byteLength).toBe(12 * 4);
    expect((await get(`${base}/fields/nonsense`)).statusCode).toBe(404);

    const review = (await get(`${base}/review`)).json();
    const named = new Set(review.findings.flatMap((finding: { places: string[] }) => finding.places));
    const drawn = unpackFloats((await get(`${base}/drawings`)).rawPayload) as object;
    for (const place of Object.keys(drawn)) expect(named).toContain(place);
    const none = await get(`${base}/drawings?places=pool-of-nobody`);
    expect(unpackFloats(none.rawPayload)).toEqual({});
    expect(review.schema).toBe('coveline.review/1');
    expect(read.revisions[0].findings).toBe(review.findings.length);
    expect(review.decisions).toEqual({});

    const finding = review.findings[0]?.id ?? 'some-finding';
    const decision = { kind: 'change', note: 'Tilt it by 3 degrees.', option: '' };
    const decide = await post(`/api/machines/${id}/commands`, { do: 'decide', revision, finding, decision });
    expect(decide.statusCode).toBe(200);
    expect(machine.parse(decide.json()).version).toBeGreaterThan(read.version);
    expect((await get(`${base}/review`)).json().decisions).toEqual({ [finding]: decision });

    const undone = machine.parse((await post(`/api/machines/${id}/undo`)).json());
    expect(undone.project.decisions[revision]).toEqual({});
    expect(undone.canUndo).toBeNull();
    expect(undone.canRedo).toMatch(/^Decide to change/);
    expect((await post(`/api/machines/${id}/undo`)).statusCode).toBe(409);
    const redone = machine.parse((await post(`/api/machines/${id}/redo`)).json());
    expect(redone.project.decisions[revision]).toEqual({ [finding]: decision });

    const history = (await get(`/api/machines/${id}/history`)).json() as { kind: string; by: string }[];
    expect(history.map((entry) => entry.kind)).toEqual(['redo', 'undo', 'do', 'do', 'do']);
    expect(new Set(history.map((entry) => entry.by))).toEqual(new Set(['Reviewer']));
  });

  test('a revision that is turned is surveyed as it stands, and turning back needs no new survey', async () => {
    const { id, revision, base } = await surveyed();
    const before = (await get(`${base}/model`)).headers.etag;
    await post(`/api/machines/${id}/commands`, { do: 'setRevision', revision, label: 'A', up: 'y' });
    const [turned] = (await get(`/api/jobs?machine=${id}`)).json() as Job[];
    expect(await finished(turned.id)).toMatchObject({ state: 'done' });
    expect((await get(`${base}/model`)).headers.etag).not.toBe(before);
    await post(`/api/machines/${id}/undo`);
    expect((await get(`${base}/model`)).headers.etag).toBe(before);
  });

  test('what another version of the program measured is not read, and can be measured again', async () => {
    const { id, revision, base } = await surveyed();
    await store.transaction(async (tx) => {
      const { at: _, ...row } = (await findSurvey(tx, id, revision, 'z'))!;
      await storeSurvey(tx, { ...row, version: 0 });
    });
    for (const what of ['review', 'survey', 'drawings', 'model']) {
      const answer = await get(`${base}/${what}`);
      expect(answer.statusCode).toBe(404);
      expect(problem.parse(answer.json()).message).toMatch(
        /another version of the program: measure it again/,
      );
    }
    const told = machine.parse((await get(`/api/machines/${id}`)).json());
    expect(told.revisions[0]).toMatchObject({ surveyedAt: null, outdated: true, findings: null });
    expect((await post(`${base}/file`)).statusCode).toBe(409);
    const again = job.parse((await post(`${base}/survey`)).json());
    expect(await finished(again.id)).toMatchObject({ state: 'done' });
    expect((await get(`${base}/review`)).statusCode).toBe(200);
  });

  test('commands sent at once are all kept', async () => {
    const { id, revision } = await surveyed();
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, i) =>
        post(`/api/machines/${id}/commands`, {
          do: 'setPart',
          revision,
          part: `part-${i}`,
          change: { joint: 'welded' },
        }),
      ),
    );
    expect(answers.map((a) => a.statusCode)).toEqual(Array(20).fill(200));
    const { project } = machine.parse((await get(`/api/machines/${id}`)).json());
    expect(Object.keys(project.parts[revision])).toHaveLength(20);
  });
});

describe('the file', () => {
  test('is made from a surveyed revision and kept', async () => {
    const { id, base } = await surveyed();
    expect(problem.parse((await get(`${base}/file.pdf`)).json()).code).toBe('no-file');
    const order = job.parse((await post(`${base}/file`)).json());
    expect(order.kind).toBe('file');
    expect(await finished(order.id)).toMatchObject({ state: 'done', error: null });
    const pdf = await get(`${base}/file.pdf`);
    expect(pdf.headers['content-type']).toBe('application/pdf');
    expect(pdf.headers['content-disposition']).toBe(`inline; filename="${id}-a.pdf"`);
    expect(pdf.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    const read = machine.parse((await get(`/api/machines/${id}`)).json());
    expect(read.revisions[0].hasFile).toBe(true);
  });

  test('needs a survey first', async () => {
    const id = await newMachine();
    const { revision } = uploadAnswer.parse((await upload(id, 'garbage.obj', 'not a model')).json());
    const answer = await post(`/api/machines/${id}/revisions/${revision}/file`);
    expect([answer.statusCode, problem.parse(answer.json()).code]).toEqual([409, 'not-surveyed']);
  });
});

describe('uploads', () => {
  test('garbage is accepted as a file, and its job fails with one sentence', async () => {
    const id = await newMachine();
    const answer = uploadAnswer.parse((await upload(id, 'garbage.stl', 'not a model')).json());
    const { state, error } = await finished(answer.job.id);
    expect(state).toBe('failed');
    expect(error).toMatch(/garbage\.stl/);
    expect(error).not.toContain('\n');
    const review = await get(`/api/machines/${id}/revisions/${answer.revision}/review`);
    expect(review.statusCode).toBe(404);
    expect(problem.parse(review.json()).code).toBe('not-surveyed');
  });

  test('label, up and unit are taken, before or behind the file', async () => {
    const id = await newMachine();
    const fields = { label: 'Prototype', up: 'y', unit: 'in' };
    await upload(id, '../../etc/box.obj', boxObj(1, 1, 1), fields);
    const { project } = machine.parse((await get(`/api/machines/${id}`)).json());
    expect(project.revisions).toEqual([{ id: 'r1', file: 'box.obj', ...fields }]);
  });

  test.each([
    [
      'too large',
      'big.stl',
      'x'.repeat(1024 * 1024 + 1),
      {},
      413,
      'big.stl is larger than the 1 MB that are taken.',
    ],
    ['empty', 'empty.stl', '', {}, 400, 'empty.stl is empty: choose a file with a model in it.'],
    ['with a wrong axis', 'box.obj', 'x', { up: 'w' }, 400, /^"up" is not as expected/],
  ])(
    'a file that is %s is refused and leaves no revision',
    async (_, name, content, fields, status, message) => {
      const id = await newMachine();
      const answer = await upload(id, name, content, fields);
      expect(answer.statusCode).toBe(status);
      expect(problem.parse(answer.json()).message).toMatch(message);
      expect(machine.parse((await get(`/api/machines/${id}`)).json()).revisions).toEqual([]);
    },
  );

  test('a request without a file says what is missing', async () => {
    const id = await newMachine();
    expect((await post(`/api/machines/${id}/revisions`, {})).statusCode).toBe(415);
  });
});

describe('what a browser must not be made to do', () => {
  const create = (headers: Record<string, string>) =>
    app.inject({ method: 'POST', url: '/api/machines', payload: { name: 'From outside' }, headers });

  test('changes are refused when another site asks for them', async () => {
    expect((await create({ origin: 'https://elsewhere.example' })).statusCode).toBe(403);
    expect((await create({ 'sec-fetch-site': 'cross-site' })).statusCode).toBe(403);
    expect((await create({ origin: 'null' })).statusCode).toBe(403);
    expect((await create({ origin: 'http://localhost:4180', host: 'localhost:4180' })).statusCode).toBe(200);
  });

  test('a foreign name for this machine is not answered', async () => {
    expect((await get('/api/machines', { host: 'elsewhere.example' })).statusCode).toBe(403);
    expect((await get('/api/machines', { host: '127.0.0.1:4180' })).statusCode).toBe(200);
    expect((await get('/api/machines', { host: '[::1]:4180' })).statusCode).toBe(200);
  });

  test('the content policy lets WebAssembly and workers run and nothing from elsewhere', async () => {
    const policy = (await get('/api/machines')).headers['content-security-policy'];
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).toContain("worker-src 'self' blob:");
    expect(policy).not.toContain('upgrade-insecure-requests');
  });
});

test('the API describes itself as OpenAPI 3.1', async () => {
  const { openapi, paths } = (await get('/api/openapi.json')).json();
  expect(openapi).toBe('3.1.0');
  const described = Object.entries(paths as Record<string, object>).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  );
  const revision = '/api/machines/{machine}/revisions/{revision}';
  expect(described.toSorted()).toEqual(
    [
      'GET /api/events',
      'GET /api/jobs',
      'GET /api/machines',
      'GET /api/machines/{machine}',
      'GET /api/machines/{machine}/history',
      'GET /api/machines/{machine}/photographs/{sha256}',
      'GET /api/materials',
      'GET /api/profiles',
      'GET /api/requirements',
      'GET /api/sources',
      `GET ${revision}/drawings`,
      `GET ${revision}/fields/{measure}`,
      `GET ${revision}/file.pdf`,
      `GET ${revision}/model`,
      `GET ${revision}/options/{finding}`,
      `GET ${revision}/review`,
      `GET ${revision}/since/{before}`,
      `GET ${revision}/site`,
      `GET ${revision}/survey`,
      'POST /api/jobs/{job}/cancel',
      'POST /api/machines',
      'POST /api/machines/{machine}/commands',
      'POST /api/machines/{machine}/photographs',
      'POST /api/machines/{machine}/redo',
      'POST /api/machines/{machine}/revisions',
      'POST /api/machines/{machine}/undo',
      `POST ${revision}/file`,
      `POST ${revision}/survey`,
    ].toSorted(),
  );
});

test('the catalogue is served', async () => {
  for (const table of ['materials', 'requirements', 'sources', 'profiles']) {
    const rows = (await get(`/api/${table}`)).json() as unknown[];
    expect(rows.length).toBeGreaterThan(3);
  }
});

test('a photograph is kept and shown; what is none is refused in one sentence', async () => {
  const id = await newMachine();
  const send = (name: string, content: string) =>
    app.inject({
      method: 'POST',
      url: `/api/machines/${id}/photographs`,
      ...multipartBody({ name, content }, {}),
    });
  const sent = await send('foot.jpg', 'no picture at all');
  expect(sent.statusCode).toBe(415);
  expect((sent.json() as { message: string }).message).toBe(
    'foot.jpg is not taken: a photograph is a JPEG or a PNG.',
  );
  expect((await send('empty.png', '')).statusCode).toBe(400);

  const png = Buffer.from(onePixel, 'base64');
  const kept = await app.inject({
    method: 'POST',
    url: `/api/machines/${id}/photographs`,
    ...multipartBytes('dot.png', png),
  });
  expect(kept.statusCode).toBe(200);
  const { sha256, name } = kept.json() as { sha256: string; name: string };
  expect(name).toBe('dot.png');
  const shown = await get(`/api/machines/${id}/photographs/${sha256}`);
  expect(shown.headers['content-type']).toBe('image/png');
  expect(shown.rawPayload).toEqual(png);
  // A model is a blob, too, and no photograph.
  const added = await upload(id, 'box.obj', boxObj(1, 1, 1));
  await finished(uploadAnswer.parse(added.json()).job.id);
  const { revisions } = machine.parse((await get(`/api/machines/${id}`)).json());
  expect((await get(`/api/machines/${id}/photographs/${revisions[0].sha256}`)).statusCode).toBe(404);
});

test('the options for a pool are tried in a process of their own, and tell what each would leave', async () => {
  const { id, revision, base } = await surveyed(dishObj(200, 150, 40));
  const change = { areaClass: 'food' };
  await post(`/api/machines/${id}/commands`, { do: 'setPart', revision, part: 'dish', change });
  const { findings } = (await get(`${base}/review`)).json() as ReviewAnswer;
  const pool = findings.find((f) => f.measure === 'standingLiquid')!;
  const address = `${base}/options/${encodeURIComponent(pool.id)}`;
  // Two ask at once: the trial is made once, and both get the same.
  const [first, second] = await Promise.all([get(address), get(address)]);
  expect(second.body).toBe(first.body);
  const { options } = first.json() as OptionsAnswer;
  const [drain] = options;
  expect(drain.text).toMatch(/^Drill a drain hole of .* through the dish, at \(/);
  // 190 mm by 140 mm by 35 mm.
  expect(drain.effects[0]).toMatchObject({ label: 'Stays after draining', unit: 'mL' });
  expect(drain.effects[0].before).toBeCloseTo(931, -1);
  expect(drain.effects[0].after).toBeLessThan(50);
  expect(options.filter((o) => o.effects.length === 0).map((o) => o.text)).toEqual(
    pool.remedies.map((r) => r.text),
  );
  expect((await get(`${base}/options/no-such`)).statusCode).toBe(404);
});

test('a machine is judged with its packs, and without them again after undo', async () => {
  const { id, base } = await surveyed();
  const pack = {
    schema: 'coveline.pack/1',
    name: 'House (invented)',
    sources: [{ key: 'house', title: 'House rules', edition: '1', kind: 'guidance', seen: 'own text' }],
    requirements: [
      {
        id: 'house-colour',
        text: 'Gaskets are blue.',
        element: 'general',
        areas: ['food', 'splash', 'nonFood'],
        hazards: ['physical'],
        evidence: [{ by: 'inspection' }],
        citations: [{ source: 'house', clause: '1', standing: 'seen' }],
        remedies: [{ text: 'Order the blue ones.', cost: 'low' }],
      },
    ],
  };
  const has = async () => ({
    listed: (await get(`/api/requirements?machine=${id}`)).body.includes('house-colour'),
    judged: (await get(`${base}/review`)).body.includes('house-colour'),
  });
  const set = { do: 'setPack', name: pack.name, pack };
  expect((await post(`/api/machines/${id}/commands`, set)).statusCode).toBe(200);
  expect(await has()).toEqual({ listed: true, judged: true });
  expect((await get('/api/requirements')).body).not.toContain('house-colour');
  await post(`/api/machines/${id}/undo`);
  expect(await has()).toEqual({ listed: false, judged: false });

  const clash = { ...pack, requirements: [{ ...pack.requirements[0], id: 'gen-drain' }] };
  await post(`/api/machines/${id}/commands`, { ...set, pack: clash });
  const { notes } = (await get(`${base}/review`)).json() as { notes: string[] };
  expect(notes[0]).toMatch(/^The pack "House \(invented\)" is left aside: .*"gen-drain" already/);
});
