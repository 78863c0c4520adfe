/** The scenario as a project: a complete brief and two revisions, and nothing decided yet. All of it invented. */
import { type PartChange, type Project, project } from '@coveline/project';
import { demoCalculations } from './calculations.ts';
import type { Parameters } from './parameters.ts';
import { type Assembly, placedBodies } from './tree.ts';

export function stepFileName(p: Parameters): string {
  return `porridge-doser-${p.revision}.step`;
}

/** What the builder told the reviewer about single parts; all others keep their proposals. */
const told: readonly { name: string; change: PartChange }[] = [
  { name: 'hopper 12 L 1.4404', change: { finish_Ra_um: 0.6, joint: 'welded' } },
  { name: 'jar guide plate 1.4301', change: { areaClass: 'food', finish_Ra_um: 0.8, joint: 'bolted' } },
  { name: 'tool shelf 3 mm 1.4301', change: { areaClass: 'splash' } },
  { name: 'rinse tank 9 L 1.4404', change: { areaClass: 'nonFood', joint: 'welded' } },
  { name: 'back wall welded 2 mm 1.4301', change: { joint: 'welded' } },
];

export interface DrawnRevision {
  readonly parameters: Parameters;
  readonly root: Assembly;
}

/** Validated against the schema of projects. */
export function demoProject(revisions: readonly DrawnRevision[]): Project {
  return project.parse({
    schema: 'coveline.project/1',
    name: 'Porridge doser (invented)',
    invented: true,
    brief: {
      purpose:
        'Doses chilled porridge into open jars and lids them, under a hood of filtered air, in the kitchen of an invented hospital. Jars are eaten within five days, some by patients who are easily infected.',
      products: [
        {
          name: 'Milk porridge, chilled (invented recipe)',
          ph: 6.4,
          waterActivity: 0.985,
          fat_percent: 2.8,
          protein_percent: 3.6,
          storage_degC: 4,
          shelfLife_days: 5,
          allergens: ['milk'],
          particles: true,
        },
      ],
      consumers: 'vulnerable',
      environment: {
        description:
          'Bench in a cooled room of a hospital kitchen, next to open dishes; floor drain, no forced drying.',
        room_degC: 12,
        relativeHumidity_percent: 75,
      },
      cleaning: {
        ways: ['byHand', 'foamAndRinse', 'outOfPlace'],
        interval_h: 8,
        rinse_degC: 50,
        agents: ['alkaline foam, chlorine-free', 'peracetic acid 0.2 %'],
      },
      careLevel: 'high',
      profile: 'eu',
      acceptedPool_mL: 1,
    },
    revisions: revisions.map(({ parameters: p }) => ({
      id: p.revision,
      label: `Revision ${p.revision}`,
      file: stepFileName(p),
      up: 'z',
      unit: 'mm',
    })),
    parts: Object.fromEntries(revisions.map(({ parameters: p, root }) => [p.revision, toldOf(root)])),
    calculations: demoCalculations(),
  });
}

/** A revision may lack a part that the builder spoke of. */
function toldOf(root: Assembly): Record<string, PartChange> {
  const bodies = placedBodies(root);
  return Object.fromEntries(
    told.flatMap(({ name, change }) =>
      bodies.filter((b) => b.name === name).map((b) => [b.id, change] as const),
    ),
  );
}
