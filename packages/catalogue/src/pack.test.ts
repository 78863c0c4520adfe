import { expect, test } from 'vitest';
import { builtIn, demandsInForce, readPack, withPack } from './index.ts';

const sound = {
  schema: 'coveline.pack/1',
  name: 'House rules (invented)',
  sources: [
    {
      key: 'house',
      title: 'House rules of an invented company',
      edition: '3',
      kind: 'guidance',
      seen: 'own text',
    },
  ],
  profiles: [{ id: 'house', name: 'House', summary: 'Stricter radii.', jurisdiction: 'eu', basedOn: 'eu' }],
  requirements: [
    {
      id: 'house-radius',
      text: 'Inside edges are rounded with 8 mm.',
      element: 'general',
      areas: ['food'],
      hazards: ['biological'],
      evidence: [{ by: 'measure', measure: 'insideCorners', strength: 'decides' }],
      citations: [{ source: 'house', clause: '4.2', standing: 'seen' }],
      limits: [
        {
          quantity: 'radius',
          atLeast: 8,
          unit: 'mm',
          datum: 'inside edge of two faces',
          areas: ['food'],
          profiles: ['house'],
          citation: { source: 'house', clause: '4.2', standing: 'seen' },
        },
      ],
      remedies: [{ text: 'Bend with a larger radius.', cost: 'low' }],
    },
  ],
  materials: [
    {
      id: 'house-blue',
      name: 'Blue EPDM of the house',
      family: 'elastomer',
      designations: ['EPDM 70'],
      nameHints: ['house blue'],
      foodContact: 'withProof',
      remarks: 'Declaration on file.',
      citation: { source: 'house', clause: 'annex', standing: 'seen' },
    },
  ],
};
type Sound = typeof sound;
const changed = (change: (p: Sound) => void): unknown => {
  const p = structuredClone(sound);
  change(p);
  return p;
};
const problems = (input: unknown) => {
  const read = readPack(input, builtIn);
  return 'problems' in read ? read.problems : [];
};

test('a sound pack is taken, survives a round trip, and its demand is in force', () => {
  const read = readPack(JSON.parse(JSON.stringify(sound)), builtIn);
  if ('problems' in read) throw new Error(read.problems.join('\n'));
  const again = readPack(JSON.parse(JSON.stringify(read.pack)), builtIn);
  expect(again).toEqual(read);
  const catalogue = withPack(builtIn, read.pack);
  expect(catalogue.materials.get('house-blue')?.family).toBe('elastomer');
  const demands = demandsInForce({ profile: 'house', careLevel: 'high', on: '2026-11-25' }, catalogue);
  const own = demands.find((d) => d.id === 'house-radius')!;
  expect(own).toMatchObject({ kind: 'guidance', limits: [{ atLeast: 8, kind: 'guidance' }] });
  expect(builtIn.requirements.has('house-radius')).toBe(false);
  const asEu = demandsInForce({ profile: 'eu', careLevel: 'high', on: '2026-11-25' }, catalogue);
  const builtInLimits = (list: typeof demands) =>
    list.filter((d) => d.id !== 'house-radius').map((d) => [d.id, d.limits]);
  expect(builtInLimits(demands)).toEqual(builtInLimits(asEu));
  expect(asEu.find((d) => d.id === 'house-radius')!.limits).toEqual([]);
});

test.each<[string, (p: Sound) => void, RegExp]>([
  [
    'an unknown element',
    (p) => {
      p.requirements[0].element = 'rocket';
    },
    /^requirements\[1\]\.element: one of the machine elements: general, feet/,
  ],
  [
    'a limit without a number',
    (p) => {
      delete (p.requirements[0].limits[0] as { atLeast?: number }).atLeast;
    },
    /^requirements\[1\]\.limits\[1\]: needs "atLeast" or "atMost"\.$/,
  ],
  [
    'a unit that nobody reads',
    (p) => {
      p.requirements[0].limits[0].unit = 'furlongz';
    },
    /limits\[1\]\.unit: a unit that can be read/,
  ],
  [
    'no datum',
    (p) => {
      p.requirements[0].limits[0].datum = '';
    },
    /datum/,
  ],
  [
    'a name that is taken',
    (p) => {
      p.requirements[0].id = 'gen-drain';
    },
    /has the requirement "gen-drain" already/,
  ],
  [
    'a source that is not there',
    (p) => {
      p.requirements[0].citations[0].source = 'nowhere';
    },
    /cites "nowhere", which is no source/,
  ],
  [
    'a profile that is not there',
    (p) => {
      p.requirements[0].limits[0].profiles = ['nowhere'];
    },
    /the profile "nowhere", which is not there/,
  ],
  [
    'a profile that is based on nothing',
    (p) => {
      p.profiles[0].basedOn = 'house';
    },
    /Profile "house" is based on "house", which is not there/,
  ],
  [
    'the same thing twice',
    (p) => {
      p.materials.push(p.materials[0]);
    },
    /has the material "house-blue" twice/,
  ],
  [
    'another schema',
    (p) => {
      p.schema = 'coveline.pack/9';
    },
    /^schema: /,
  ],
])('%s gets one sentence that says where', (_, change, says) => {
  const found = problems(changed(change));
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(says);
});

test('what is no pack at all is refused, not thrown', () => {
  for (const input of [null, 5, 'x', [], {}]) expect(problems(input).length).toBeGreaterThan(0);
});
