/** Bodies of a STEP file: the items that hold faces. */
import { attributes, instance, refOf, refsOf, textOf } from './parse.ts';
import type { Part21Index } from './scan.ts';

/** Entities that the reader turns into a part. */
export const solidEntities = ['MANIFOLD_SOLID_BREP', 'BREP_WITH_VOIDS', 'FACETED_BREP'] as const;
export const surfaceEntities = ['SHELL_BASED_SURFACE_MODEL', 'FACE_BASED_SURFACE_MODEL'] as const;

/** Entities that carry shape in a form that is not read; a file that has them is told so. */
export const unreadEntities: Readonly<Record<string, string>> = {
  TESSELLATED_SOLID: 'tessellated solid',
  TESSELLATED_SHELL: 'tessellated shell',
  CSG_SOLID: 'CSG solid',
  EXTRUDED_AREA_SOLID: 'extruded solid',
  REVOLVED_AREA_SOLID: 'revolved solid',
  EXTRUDED_FACE_SOLID: 'extruded solid',
  REVOLVED_FACE_SOLID: 'revolved solid',
  SWEPT_DISK_SOLID: 'swept solid',
  SOLID_REPLICA: 'copied solid',
};

export interface Body {
  readonly id: number;
  readonly entity: string;
  readonly solid: boolean;
  readonly name: string;
  readonly shells: readonly number[];
  readonly faces: readonly number[];
}

/** The body at an instance; undefined where the instance is none. */
export function bodyAt(index: Part21Index, id: number): Body | undefined {
  const found = instance(index, id);
  if (!found) return undefined;
  const entity = [...solidEntities, ...surfaceEntities].find((name) => found.by.has(name));
  if (!entity) return undefined;
  // BREP_WITH_VOIDS as a complex instance keeps the outer shell under MANIFOLD_SOLID_BREP.
  const outer = found.by.get('MANIFOLD_SOLID_BREP');
  const own = attributes(found, 'BREP_WITH_VOIDS', entity);
  const shells: number[] = [];
  for (const value of [...(outer && outer !== own ? outer : []), ...own]) {
    if (refOf(value) >= 0) shells.push(refOf(value));
    shells.push(...refsOf(value));
  }
  const faces = new Set<number>();
  for (const shell of shells) for (const face of facesOf(index, shell, 0)) faces.add(face);
  const name = textOf(found.by.get('REPRESENTATION_ITEM')?.[0] ?? own[0] ?? outer?.[0]);
  return {
    id,
    entity,
    solid: (solidEntities as readonly string[]).includes(entity),
    name,
    shells,
    faces: [...faces],
  };
}

function facesOf(index: Part21Index, shell: number, depth: number): number[] {
  const found = instance(index, shell);
  if (!found || depth > 3) return [];
  const oriented = found.by.get('ORIENTED_CLOSED_SHELL') ?? found.by.get('ORIENTED_OPEN_SHELL');
  if (oriented) return oriented.flatMap((value) => facesOf(index, refOf(value), depth + 1));
  const list = attributes(found, 'CLOSED_SHELL', 'OPEN_SHELL', 'CONNECTED_FACE_SET');
  return refsOf(list[list.length - 1]);
}
