/** Objects, components and build items of one 3MF model part (3MF Core Specification 1.3). */

import type { Vec3 } from '@coveline/model';
import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { Growing } from '../growing.ts';
import { identity, type Matrix } from '../matrix.ts';

export interface Placed {
  readonly object: string;
  /** Model part that holds the object (production extension); undefined for the same part. */
  readonly path?: string;
  /** Object to parent, in the unit of the part. */
  readonly matrix: Matrix;
}

export interface ThreeMfObject {
  readonly id: string;
  readonly name: string;
  readonly type: string;
  readonly colour?: Vec3;
  readonly positions: Growing;
  readonly triangles: Growing;
  readonly components: Placed[];
}

export interface ThreeMfPart {
  /** As written: millimeter, inch … */
  readonly unit: string;
  readonly objects: ReadonlyMap<string, ThreeMfObject>;
  readonly items: readonly Placed[];
}

/** Throws an Error with the parser's words where the XML is broken or a value is no number. */
export function parseThreeMf(xml: Uint8Array): ThreeMfPart {
  const objects = new Map<string, ThreeMfObject>();
  const items: Placed[] = [];
  const colours = new Map<string, (Vec3 | undefined)[]>();
  let unit = 'millimeter';
  let object: ThreeMfObject | undefined;
  let colourGroup: (Vec3 | undefined)[] | undefined;

  const open = (tag: SaxesTagPlain) => {
    const a = tag.attributes;
    switch (localName(tag.name)) {
      case 'model':
        unit = a.unit ?? 'millimeter';
        break;
      case 'basematerials':
      case 'colorgroup':
        colourGroup = [];
        colours.set(a.id ?? '', colourGroup);
        break;
      case 'base':
        colourGroup?.push(colourFrom(a.displaycolor));
        break;
      case 'color':
        colourGroup?.push(colourFrom(a.color));
        break;
      case 'object': {
        const colour = colours.get(a.pid ?? '')?.[Number(a.pindex ?? 0)];
        object = {
          id: a.id ?? '',
          name: a.name ?? '',
          type: a.type ?? 'model',
          ...(colour ? { colour } : {}),
          positions: new Growing(),
          triangles: new Growing(),
          components: [],
        };
        objects.set(object.id, object);
        break;
      }
      case 'vertex':
        for (const key of ['x', 'y', 'z']) object?.positions.push(numeric(a, key, 'vertex'));
        break;
      case 'triangle':
        for (const key of ['v1', 'v2', 'v3']) object?.triangles.push(index(a, key));
        break;
      case 'component':
        object?.components.push(placedFrom(a));
        break;
      case 'item':
        items.push(placedFrom(a));
        break;
      default:
    }
  };

  const parser = new SaxesParser();
  parser.on('opentag', open);
  parser.on('closetag', (tag) => {
    if (localName(tag.name) === 'object') object = undefined;
  });
  parser.on('error', (error) => {
    throw error;
  });
  const decoder = new TextDecoder();
  const piece = 1 << 20;
  for (let at = 0; at < xml.length; at += piece) {
    parser.write(decoder.decode(xml.subarray(at, at + piece), { stream: true }));
  }
  parser.write(decoder.decode()).close();
  return { unit, objects, items };
}

const localName = (name: string) => name.slice(name.indexOf(':') + 1);

type Attributes = Record<string, string>;

function placedFrom(a: Attributes): Placed {
  const path = Object.entries(a).find(([key]) => localName(key) === 'path')?.[1];
  return {
    object: a.objectid ?? '',
    ...(path === undefined ? {} : { path }),
    matrix: a.transform === undefined ? identity() : matrixFrom(a.transform),
  };
}

/** Twelve numbers, four rows of three, for row vectors: read in order they are the columns of ours. */
function matrixFrom(text: string): Matrix {
  const values = text.trim().split(/\s+/).map(Number);
  if (values.length !== 12 || !values.every(Number.isFinite)) {
    throw new Error(`the transform "${text.slice(0, 60)}" is not twelve numbers`);
  }
  const m = identity();
  for (let row = 0; row < 4; row++) for (let k = 0; k < 3; k++) m[row * 4 + k] = values[row * 3 + k];
  return m;
}

function numeric(a: Attributes, key: string, tag: string): number {
  const value = Number(a[key]);
  if (a[key] === undefined || !Number.isFinite(value)) {
    throw new Error(`a ${tag} has ${a[key] === undefined ? 'no' : 'the'} ${key} ${a[key] ?? ''}`.trim());
  }
  return value;
}

function index(a: Attributes, key: string): number {
  const value = numeric(a, key, 'triangle');
  if (!Number.isInteger(value) || value < 0) throw new Error(`a triangle has the ${key} ${value}`);
  return value;
}

/** #RRGGBB or #RRGGBBAA, sRGB. */
function colourFrom(text: string | undefined): Vec3 | undefined {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})?$/i.exec(text ?? '');
  return hex
    ? [
        Number.parseInt(hex[1], 16) / 255,
        Number.parseInt(hex[2], 16) / 255,
        Number.parseInt(hex[3], 16) / 255,
      ]
    : undefined;
}
