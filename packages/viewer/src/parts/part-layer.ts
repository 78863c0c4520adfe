import type { Model, Vec3 } from '@coveline/model';
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshMatcapMaterial,
  type Plane,
} from 'three';
import { mergeEdges } from '../geometry/merge-edges.ts';
import { mergeFaces } from '../geometry/merge-faces.ts';
import { matcap } from '../look/matcap.ts';
import type { Stage } from '../stage.ts';
import { colorPart, type PaintedField } from './part-colors.ts';
import { orderByState, type PartState } from './part-order.ts';

/**
 * The machine itself. All parts share one set of attributes; what is drawn solid and what as a ghost is an order
 * of their corners, so that a view of any size costs four draw calls.
 */
export class PartLayer {
  readonly solid: Mesh<BufferGeometry, MeshMatcapMaterial>;
  private readonly ghost: Mesh<BufferGeometry, MeshMatcapMaterial>;
  private readonly edges: LineSegments<BufferGeometry, LineBasicMaterial>;
  private readonly ghostEdges: LineSegments<BufferGeometry, LineBasicMaterial>;
  private readonly faces;
  private readonly firstSegment: Uint32Array;
  private readonly stage: Stage;
  private readonly model: Model;
  private readonly states: PartState[];
  private readonly base: (Vec3 | null)[];
  private selected: ReadonlySet<number> = new Set();
  private field: PaintedField | null = null;

  constructor(stage: Stage, model: Model) {
    this.stage = stage;
    this.model = model;
    this.states = model.parts.map(() => 'shown');
    this.base = model.parts.map((part) => part.color ?? null);
    this.faces = mergeFaces(model, stage.origin);
    const lines = mergeEdges(model, stage.origin);
    this.firstSegment = lines.first;

    const faceData = {
      position: new BufferAttribute(this.faces.position, 3),
      normal: new BufferAttribute(this.faces.normal, 4, true),
      color: new BufferAttribute(this.faces.color, 4, true),
    };
    const faceIndex = new BufferAttribute(new Uint32Array(this.faces.position.length / 3), 1);
    const edgeData = { position: new BufferAttribute(lines.position, 3) };
    const edgeIndex = new BufferAttribute(new Uint32Array(lines.position.length / 3), 1);

    const offset = { polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 };
    this.solid = new Mesh(
      geometry(faceData, faceIndex),
      new MeshMatcapMaterial({ vertexColors: true, side: DoubleSide, ...offset }),
    );
    this.ghost = new Mesh(
      geometry(faceData, faceIndex),
      new MeshMatcapMaterial({ vertexColors: true, transparent: true, opacity: 0.16, depthWrite: false }),
    );
    this.edges = new LineSegments(geometry(edgeData, edgeIndex), new LineBasicMaterial());
    this.ghostEdges = new LineSegments(
      geometry(edgeData, edgeIndex),
      new LineBasicMaterial({ transparent: true, opacity: 0.7, depthWrite: false }),
    );
    this.ghost.renderOrder = 6;
    this.ghostEdges.renderOrder = 7;
    for (const object of this.objects) {
      object.frustumCulled = false;
      stage.scene.add(object);
    }
    this.restyle();
    this.reorder();
  }

  state(part: number): PartState {
    return this.states[part];
  }

  setStates(next: (part: number) => PartState): void {
    this.states.forEach((_, part) => {
      this.states[part] = next(part);
    });
    this.reorder();
  }

  /** Colour of parts in place of the model's own; null gives that back. */
  setBase(color: (part: number) => Vec3 | null): void {
    this.model.parts.forEach((part, index) => {
      this.base[index] = color(index) ?? part.color ?? null;
    });
    this.recolor(this.model.parts.keys());
  }

  select(parts: ReadonlySet<number>): void {
    const touched = new Set([...this.selected, ...parts]);
    this.selected = parts;
    this.recolor(touched);
  }

  paint(field: PaintedField | null): void {
    this.field = field;
    this.recolor(this.model.parts.keys());
  }

  clip(planes: Plane[]): void {
    for (const object of this.objects) object.material.clippingPlanes = planes;
    this.stage.requestRender();
  }

  restyle(): void {
    const { sheet } = this.stage;
    this.solid.material.matcap?.dispose();
    this.solid.material.matcap = matcap(sheet);
    this.ghost.material.matcap = this.solid.material.matcap;
    this.ghost.material.color.setScalar(sheet.ghostShade);
    this.edges.material.color.setRGB(...sheet.edge);
    this.ghostEdges.material.color.setRGB(...sheet.ghostEdge);
    this.recolor(this.model.parts.keys());
  }

  dispose(): void {
    this.solid.material.matcap?.dispose();
    for (const object of this.objects) {
      object.removeFromParent();
      object.geometry.dispose();
      object.material.dispose();
    }
  }

  private get objects() {
    return [this.solid, this.ghost, this.edges, this.ghostEdges];
  }

  private recolor(parts: Iterable<number>): void {
    const { steel, selected } = this.stage.sheet;
    for (const part of parts)
      colorPart(
        this.faces,
        part,
        this.base[part] ?? steel,
        this.selected.has(part) ? selected : null,
        this.field,
      );
    this.solid.geometry.attributes.color.needsUpdate = true;
    this.stage.requestRender();
  }

  private reorder(): void {
    const state = (part: number) => this.states[part];
    const pairs = [
      [this.solid, this.ghost, this.faces.first, 3],
      [this.edges, this.ghostEdges, this.firstSegment, 2],
    ] as const;
    for (const [solid, ghost, first, size] of pairs) {
      const index = solid.geometry.index!;
      const count = orderByState(first, size, state, index.array as Uint32Array);
      index.needsUpdate = true;
      solid.geometry.setDrawRange(0, count.shown);
      ghost.geometry.setDrawRange(count.shown, count.ghost);
      solid.visible = count.shown > 0;
      ghost.visible = count.ghost > 0;
    }
    this.stage.requestRender();
  }
}

function geometry(attributes: Record<string, BufferAttribute>, index: BufferAttribute): BufferGeometry {
  const out = new BufferGeometry();
  for (const [name, attribute] of Object.entries(attributes)) out.setAttribute(name, attribute);
  out.setIndex(index);
  return out;
}
