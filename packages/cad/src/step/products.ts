/** Products of a STEP file, the representations that hold their shape, and how they are assembled. */
import { attributes, instance, refOf, textOf } from './parse.ts';
import { instancesOf, type Part21Index } from './scan.ts';

/** One use of a product in another (next_assembly_usage_occurrence). */
export interface Component {
  readonly child: number;
  /** The representation_relationship that places it; -1 where the file gives none. */
  readonly relationship: number;
  /** Instances that stand for this use where a style is given to it alone. */
  readonly contexts: readonly number[];
}

export interface Products {
  /** Product definitions that no assembly uses, in file order. */
  readonly roots: readonly number[];
  readonly nameOf: (definition: number) => string;
  readonly components: ReadonlyMap<number, readonly Component[]>;
  readonly representations: ReadonlyMap<number, readonly number[]>;
  readonly definitionOfRepresentation: ReadonlyMap<number, number>;
  /** Representations that state the same shape in the same frame, both ways. */
  readonly equivalents: ReadonlyMap<number, readonly number[]>;
  /** Relationships that place one representation in another and belong to no component. */
  readonly placedLinks: readonly number[];
  /** Placements whose component cannot be found: something that the file placed is lost. */
  readonly unownedPlacements: readonly number[];
}

export function readProducts(index: Part21Index): Products {
  const representations = new Map<number, number[]>();
  const definitionOfRepresentation = new Map<number, number>();
  const shapeOf = (id: number) =>
    refOf(attributes(instance(index, id), 'PRODUCT_DEFINITION_SHAPE', 'PROPERTY_DEFINITION')[2]);

  const occurrences = new Map<number, { parent: number; child: number }>();
  for (const id of instancesOf(index, 'NEXT_ASSEMBLY_USAGE_OCCURRENCE')) {
    const list = attributes(instance(index, id), 'NEXT_ASSEMBLY_USAGE_OCCURRENCE');
    // A complex instance splits the attributes: parent and child then stand under PRODUCT_DEFINITION_RELATIONSHIP.
    const full = list.length >= 5 ? list : attributes(instance(index, id), 'PRODUCT_DEFINITION_RELATIONSHIP');
    const parent = refOf(full[3]);
    const child = refOf(full[4]);
    if (parent >= 0 && child >= 0) occurrences.set(id, { parent, child });
  }

  const contextsOf = new Map<number, number[]>();
  for (const id of instancesOf(index, 'SHAPE_DEFINITION_REPRESENTATION')) {
    const [definition, representation] = attributes(instance(index, id), 'SHAPE_DEFINITION_REPRESENTATION');
    const owner = shapeOf(refOf(definition));
    if (owner < 0 || refOf(representation) < 0) continue;
    if (occurrences.has(owner)) {
      append(contextsOf, owner, refOf(representation));
      continue;
    }
    // Shapes of mere aspects (a datum, a group of faces) repeat geometry that its product shows already.
    if (!isDefinition(index, owner)) continue;
    append(representations, owner, refOf(representation));
    if (!definitionOfRepresentation.has(refOf(representation))) {
      definitionOfRepresentation.set(refOf(representation), owner);
    }
  }

  const relationshipOf = new Map<number, number>();
  const used = new Set<number>();
  const unownedPlacements: number[] = [];
  for (const id of instancesOf(index, 'CONTEXT_DEPENDENT_SHAPE_REPRESENTATION')) {
    const [relationship, definition] = attributes(
      instance(index, id),
      'CONTEXT_DEPENDENT_SHAPE_REPRESENTATION',
    );
    used.add(refOf(relationship));
    const owner = shapeOf(refOf(definition));
    relationshipOf.set(owner, refOf(relationship));
    if (!occurrences.has(owner)) unownedPlacements.push(id);
  }

  const components = new Map<number, Component[]>();
  const children = new Set<number>();
  for (const [id, { parent, child }] of occurrences) {
    const relationship = relationshipOf.get(id) ?? -1;
    append(components, parent, {
      child,
      relationship,
      contexts: [id, relationship, ...(contextsOf.get(id) ?? [])],
    });
    children.add(child);
  }

  const equivalents = new Map<number, number[]>();
  const placedLinks: number[] = [];
  for (const id of instancesOf(index, 'SHAPE_REPRESENTATION_RELATIONSHIP')) {
    if (used.has(id)) continue;
    const found = instance(index, id);
    if (found?.by.has('REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION')) {
      placedLinks.push(id);
      continue;
    }
    const [, , a, b] = attributes(found, 'REPRESENTATION_RELATIONSHIP', 'SHAPE_REPRESENTATION_RELATIONSHIP');
    for (const [from, to] of [
      [refOf(a), refOf(b)],
      [refOf(b), refOf(a)],
    ]) {
      append(equivalents, from, to);
    }
  }

  const names = new Map<number, string>();
  const definitions = new Set([...representations.keys(), ...components.keys()]);
  let roots = [...definitions].filter((id) => !children.has(id));
  // Products that only contain one another have no root; start from all of them, so that the loop is found and told.
  if (roots.length === 0) roots = [...definitions];
  return {
    roots,
    nameOf: (definition) => {
      const known = names.get(definition) ?? productName(index, definition);
      names.set(definition, known);
      return known;
    },
    components,
    representations,
    definitionOfRepresentation,
    equivalents,
    placedLinks,
    unownedPlacements,
  };
}

function append<T>(lists: Map<number, T[]>, key: number, value: T): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

const definitionEntities = ['PRODUCT_DEFINITION', 'PRODUCT_DEFINITION_WITH_ASSOCIATED_DOCUMENTS'] as const;

function isDefinition(index: Part21Index, id: number): boolean {
  const found = instance(index, id);
  return definitionEntities.some((entity) => found?.by.has(entity));
}

/** Files that the assembly leaves its geometry to (external references), by name. */
export function externalFiles(index: Part21Index): string[] {
  return instancesOf(index, 'DOCUMENT_FILE')
    .map((id) => {
      const [code, name] = attributes(instance(index, id), 'DOCUMENT_FILE');
      return textOf(code).trim() || textOf(name).trim();
    })
    .filter((name) => name !== '');
}

function productName(index: Part21Index, definition: number): string {
  const found = instance(index, definition);
  const list = attributes(found, ...definitionEntities);
  const formation = attributes(
    instance(index, refOf(list[2])),
    'PRODUCT_DEFINITION_FORMATION',
    'PRODUCT_DEFINITION_FORMATION_WITH_SPECIFIED_SOURCE',
  );
  const product = attributes(instance(index, refOf(formation[2])), 'PRODUCT');
  return textOf(product[1]).trim() || textOf(product[0]).trim();
}
