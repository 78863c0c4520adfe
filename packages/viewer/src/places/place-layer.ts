import type { Vec3 } from '@coveline/model';
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  Mesh,
  MeshBasicMaterial,
  type Object3D,
  type Plane,
} from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import { border } from '../geometry/border.ts';
import type { PlaceKind } from '../look/sheet.ts';
import type { Stage } from '../stage.ts';

/** What is drawn for a place: free triangles and polylines, flat xyz in the frame of the model, mm. */
export interface PlaceDrawing {
  readonly id: string;
  readonly kind: PlaceKind;
  readonly triangles?: ArrayLike<number>;
  readonly lines?: readonly ArrayLike<number>[];
}

interface Drawn {
  readonly drawing: PlaceDrawing;
  readonly group: Group;
  readonly kind: PlaceKind;
  readonly fills: Mesh<BufferGeometry, MeshBasicMaterial>[];
  readonly strokes: LineSegments2[];
}

/** Liquid as liquid, walls of gaps, inside corners, joint lines, threads, openings … */
export class PlaceLayer {
  private readonly drawn = new Map<string, Drawn>();
  private readonly stage: Stage;
  private planes: Plane[] = [];
  private chosen: ReadonlySet<string> = new Set();
  private shown: (id: string) => boolean = () => true;

  constructor(stage: Stage) {
    this.stage = stage;
  }

  set(drawings: readonly PlaceDrawing[]): void {
    const before = new Map(this.drawn);
    this.drawn.clear();
    for (const drawing of drawings) {
      const last = before.get(drawing.id);
      const stays = last && isSame(last.drawing, drawing);
      if (stays) before.delete(drawing.id);
      this.drawn.set(drawing.id, stays ? last : this.draw(drawing));
    }
    for (const gone of before.values()) release(gone);
    this.restyle();
  }

  /** Which places are drawn at all, and which of them stand out. */
  show(shown: (id: string) => boolean, chosen: ReadonlySet<string>): void {
    this.shown = shown;
    this.chosen = chosen;
    this.restyle();
  }

  clip(planes: Plane[]): void {
    this.planes = planes;
    this.restyle();
  }

  resize(): void {
    for (const { strokes } of this.drawn.values())
      for (const stroke of strokes) stroke.material.resolution.set(this.stage.width, this.stage.height);
  }

  restyle(): void {
    const { sheet } = this.stage;
    for (const [id, { group, kind, fills, strokes }] of this.drawn) {
      const chosen = this.chosen.has(id);
      const quiet = this.chosen.size > 0 && !chosen;
      group.visible = this.shown(id);
      for (const { material } of fills) {
        material.color.setRGB(...sheet.kinds[kind]);
        material.opacity = (kind === 'liquid' ? 0.62 : 0.4) * (quiet ? 0.55 : 1);
        material.clippingPlanes = this.planes;
      }
      for (const { material } of strokes) {
        material.color.setRGB(...(kind === 'liquid' ? sheet.waterRim : sheet.kinds[kind]));
        material.linewidth = chosen ? 3.5 : kind === 'liquid' ? 1.4 : 2;
        material.opacity = quiet ? 0.45 : 1;
        material.clippingPlanes = this.planes;
      }
    }
    this.resize();
    this.stage.requestRender();
  }

  dispose(): void {
    for (const drawn of this.drawn.values()) release(drawn);
    this.drawn.clear();
  }

  private draw(drawing: PlaceDrawing): Drawn {
    const group = new Group();
    const fills: Drawn['fills'] = [];
    const strokes: LineSegments2[] = [];
    if (drawing.triangles?.length) {
      const position = this.local(drawing.triangles);
      const geometry = new BufferGeometry().setAttribute('position', new BufferAttribute(position, 3));
      fills.push(
        new Mesh(
          geometry,
          new MeshBasicMaterial({
            transparent: true,
            depthWrite: false,
            side: DoubleSide,
            polygonOffset: true,
            polygonOffsetFactor: -1,
            polygonOffsetUnits: -2,
          }),
        ),
      );
      strokes.push(thick(border(position), false));
    }
    for (const line of drawing.lines ?? [])
      strokes.push(thick(segments(this.local(line)), drawing.kind === 'gap'));
    for (const object of [...fills, ...strokes] as Object3D[]) {
      object.renderOrder = 4;
      group.add(object);
    }
    this.stage.scene.add(group);
    return { drawing, group, kind: drawing.kind, fills, strokes };
  }

  private local(points: ArrayLike<number>): Float32Array {
    const origin: Vec3 = this.stage.origin;
    const out = new Float32Array(points.length);
    for (let i = 0; i < points.length; i++) out[i] = points[i] - origin[i % 3];
    return out;
  }
}

/** The same numbers, by identity: places come again whenever some are added. */
function isSame(a: PlaceDrawing, b: PlaceDrawing): boolean {
  return a.kind === b.kind && a.triangles === b.triangles && a.lines === b.lines;
}

function release({ group }: Drawn): void {
  group.removeFromParent();
  group.traverse((o) => {
    const { geometry, material } = o as Partial<Mesh<BufferGeometry, MeshBasicMaterial>>;
    geometry?.dispose();
    material?.dispose();
  });
}

/** A polyline as pairs of points. */
function segments(line: Float32Array): Float32Array {
  const count = Math.max(0, line.length / 3 - 1);
  const out = new Float32Array(count * 6);
  for (let i = 0; i < count; i++) out.set(line.subarray(i * 3, i * 3 + 6), i * 6);
  return out;
}

function thick(pairs: Float32Array, dashed: boolean): LineSegments2 {
  const geometry = new LineSegmentsGeometry();
  if (pairs.length > 0) geometry.setPositions(pairs);
  const material = new LineMaterial({
    transparent: true,
    dashed,
    dashSize: 6,
    gapSize: 3,
    polygonOffset: true,
    polygonOffsetFactor: -2,
    polygonOffsetUnits: -4,
  });
  const line = new LineSegments2(geometry, material);
  line.visible = pairs.length > 0;
  if (dashed && pairs.length > 0) line.computeLineDistances();
  return line;
}
