import type { Model, Vec3 } from '@coveline/model';
import { Box3, Vector3 } from 'three';
import { choosePose } from './camera/choose-pose.ts';
import { Flight } from './camera/flight.ts';
import { navigate } from './camera/navigate.ts';
import { axes, CameraRig, type Projection } from './camera/rig.ts';
import { type ViewName, views } from './camera/views.ts';
import { type CameraState, Emitter, type ViewerEvents } from './events.ts';
import { boxOf, type Loaded, load, unload } from './loaded.ts';
import type { SheetName } from './look/sheet.ts';
import type { Measurement } from './measure/measurement.ts';
import { Ruler } from './measure/ruler.ts';
import { Overlay, type Pinned } from './overlay/overlay.ts';
import type { PaintedField } from './parts/part-colors.ts';
import type { PartState } from './parts/part-order.ts';
import type { Hit } from './pick/part-picker.ts';
import { rayAt } from './pick/ray-at.ts';
import { Sight } from './pick/sight.ts';
import { type PlaceDrawing, PlaceLayer } from './places/place-layer.ts';
import { RenderLoop } from './render-loop.ts';
import type { SectionSetting } from './section/section.ts';
import { Stage } from './stage.ts';

export interface ViewerOptions {
  readonly sheet: SheetName;
  readonly antialias: boolean;
  readonly reducedMotion: boolean;
  /** Words that stand beside a measured line. */
  readonly measurementWords: (m: Measurement) => string;
}

/**
 * The view of one model. Lives in an element of its own, outside any framework; lengths are mm in the frame of the
 * model, parts are named by their id. The constructor throws when the browser offers no WebGL 2.
 */
export class Viewer extends Emitter<ViewerEvents> {
  readonly canvas = document.createElement('canvas');
  private readonly host: HTMLElement;
  private readonly stage: Stage;
  private readonly rig: CameraRig;
  private readonly flight: Flight;
  private readonly loop: RenderLoop;
  private readonly overlay: Overlay;
  private readonly places: PlaceLayer;
  private readonly ruler: Ruler;
  private readonly stopNavigation: () => void;
  private readonly resized: ResizeObserver;
  private readonly options: ViewerOptions;
  private loaded: Loaded | null = null;
  private pivot = new Vector3();

  constructor(host: HTMLElement, options: ViewerOptions) {
    super();
    this.host = host;
    this.options = options;
    Object.assign(this.canvas.style, { position: 'absolute', inset: '0', width: '100%', height: '100%' });
    this.loop = new RenderLoop(() => this.draw());
    this.stage = new Stage(this.canvas, options.antialias, () => this.loop.request());
    host.append(this.canvas);
    this.rig = new CameraRig(() => this.cameraMoved());
    this.flight = new Flight(this.rig);
    this.flight.still = options.reducedMotion;
    this.overlay = new Overlay(host, this.stage);
    this.places = new PlaceLayer(this.stage);
    this.ruler = new Ruler(this.stage, this.overlay, (m) => this.emit('measured', m));
    this.stopNavigation = navigate({
      element: host,
      rig: this.rig,
      flight: this.flight,
      pivotAt: (x, y) => this.pivotAt(x, y),
      clicked: (x, y) => this.clicked(x, y),
      fit: () => this.fit(),
    });
    this.canvas.addEventListener('webglcontextlost', this.lost);
    this.canvas.addEventListener('webglcontextrestored', this.restored);
    this.resized = new ResizeObserver(() => this.resize());
    this.resized.observe(host);
    this.setSheet(options.sheet);
  }

  /** Frames drawn so far. */
  get frames(): number {
    return this.loop.frames;
  }

  load(model: Model): void {
    unload(this.loaded);
    this.places.set([]);
    this.ruler.clear();
    this.loaded = load(this.stage, model);
    this.pivot = new Vector3();
    this.rig.setReach(new Vector3(), this.loaded.radius);
    this.rig.pose = {
      ...this.rig.pose,
      ...views.iso,
      target: new Vector3(),
      distance: this.rig.distanceFor(this.loaded.radius),
    };
  }

  setSheet(sheet: SheetName): void {
    this.stage.sheetName = sheet;
    this.loaded?.parts.restyle();
    this.loaded?.section.restyle();
    this.places.restyle();
  }

  setReducedMotion(reduced: boolean): void {
    this.flight.still = reduced;
  }

  get projection(): Projection {
    return this.rig.projection;
  }

  set projection(kind: Projection) {
    this.rig.projection = kind;
  }

  /** Looks from a named side at what is looked at now, or at the whole model. */
  view(name: ViewName): void {
    this.flight.to({ ...this.rig.pose, ...views[name] });
  }

  /** Brings parts, or the whole model, into the picture from the side that it is seen from now. */
  fit(parts: readonly string[] = []): void {
    if (!this.loaded) return;
    const box = boxOf(this.stage, this.loaded, parts);
    const radius = Math.max(box.getSize(new Vector3()).length() / 2, this.loaded.radius * 0.02);
    this.flight.to({
      ...this.rig.pose,
      target: box.getCenter(new Vector3()),
      distance: this.rig.distanceFor(radius),
    });
  }

  /**
   * Flies to a place, on the side from which most of `points` can be seen, with some of its surroundings.
   * Returns the parts that hide it even from there; none when at least half of it can be seen.
   */
  fly(bounds: readonly [Vec3, Vec3], points: readonly Vec3[]): string[] {
    if (!this.loaded) return [];
    const { parts, picker, section, radius, model } = this.loaded;
    const box = new Box3(this.stage.toScene(bounds[0]), this.stage.toScene(bounds[1]));
    const size = Math.max((box.getSize(new Vector3()).length() / 2) * 1.7, radius * 0.13);
    const sight = new Sight(picker, (part) => parts.state(part) === 'shown', section.active);
    const targets = points.map((p) => this.stage.toScene(p));
    const { pose, seen } = choosePose(targets, box, this.rig.distanceFor(size), this.rig.pose, sight);
    this.pivot = pose.target.clone();
    this.flight.to(pose);
    if (seen >= 0.5) return [];
    return sight.inFront(targets, axes(pose).z).map((part) => model.parts[part].id);
  }

  /** Walks the camera up or down, so that it looks at this height. */
  walkTo(height_mm: number): void {
    const target = this.rig.pose.target.clone();
    target.z = height_mm - this.stage.origin[2];
    this.flight.stop();
    this.rig.pose = { ...this.rig.pose, target };
  }

  setPartStates(state: (part: string) => PartState): void {
    this.loaded?.parts.setStates((index) => state(this.loaded!.model.parts[index].id));
  }

  setPartColors(color: (part: string) => Vec3 | null): void {
    this.loaded?.parts.setBase((index) => color(this.loaded!.model.parts[index].id));
  }

  selectParts(parts: readonly string[]): void {
    const known = parts.map((id) => this.loaded?.partIndex.get(id)).filter((i) => i !== undefined);
    this.loaded?.parts.select(new Set(known));
  }

  /** Paints a field on the triangles; null takes the paint off. */
  paint(field: PaintedField | null): void {
    this.loaded?.parts.paint(field);
  }

  setPlaces(drawings: readonly PlaceDrawing[]): void {
    this.places.set(drawings);
  }

  showPlaces(shown: (id: string) => boolean, chosen: ReadonlySet<string>): void {
    this.places.show(shown, chosen);
  }

  /** Pins signs or words to points of the model; each call replaces its group. */
  pin(group: string, pinned: readonly Pinned[]): void {
    this.overlay.set(group, pinned);
  }

  section(setting: SectionSetting | null): void {
    if (!this.loaded) return;
    this.loaded.section.set(setting);
    const planes = setting ? [this.loaded.section.plane] : [];
    this.loaded.parts.clip(planes);
    this.places.clip(planes);
  }

  /** While true, clicks measure instead of selecting. */
  setMeasuring(active: boolean): void {
    this.ruler.active = active;
    if (!active) this.ruler.clear();
  }

  dispose(): void {
    this.flight.stop();
    this.loop.stop();
    this.stopNavigation();
    this.resized.disconnect();
    this.canvas.removeEventListener('webglcontextlost', this.lost);
    this.canvas.removeEventListener('webglcontextrestored', this.restored);
    unload(this.loaded);
    this.places.dispose();
    this.ruler.dispose();
    this.overlay.dispose();
    this.stage.renderer.dispose();
    this.stage.renderer.forceContextLoss();
    this.canvas.remove();
  }

  private draw(): void {
    if (this.stage.renderer.getContext().isContextLost()) return;
    this.stage.renderer.render(this.stage.scene, this.rig.camera);
    this.overlay.update(this.rig.camera);
  }

  private resize(): void {
    const { clientWidth: width, clientHeight: height } = this.host;
    if (width === 0 || height === 0) return;
    this.stage.width = width;
    this.stage.height = height;
    this.stage.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    this.stage.renderer.setSize(width, height, false);
    this.places.resize();
    this.rig.setAspect(width / height);
  }

  private cameraMoved(): void {
    this.loop.request();
    this.emit('camera', this.cameraState());
  }

  cameraState(): CameraState {
    const { pose, span_mm } = this.rig;
    const height = pose.target.z + this.stage.origin[2];
    const half = (span_mm / 2) * Math.max(0.15, axes(pose).y.z);
    return {
      azimuth: pose.azimuth,
      elevation: pose.elevation,
      height_mm: height,
      visible_mm: [height - half, height + half],
      scale: span_mm / (this.stage.height * (25.4 / 96)),
    };
  }

  private hitAt(x: number, y: number): Hit | null {
    if (!this.loaded) return null;
    const { parts, picker, section } = this.loaded;
    return picker.first(
      rayAt(this.rig.camera, this.stage, x, y),
      (part) => parts.state(part) === 'shown',
      section.active,
    );
  }

  private pivotAt(x: number, y: number): Vector3 {
    const hit = this.hitAt(x, y);
    if (hit) this.pivot = hit.point.clone();
    return this.pivot;
  }

  private clicked(x: number, y: number): void {
    const hit = this.hitAt(x, y);
    if (!this.ruler.active || !this.loaded) {
      const part = hit && this.loaded ? this.loaded.model.parts[hit.part].id : null;
      this.emit(
        'pick',
        hit && part ? { part, at: this.stage.toModel(hit.point), triangle: hit.triangle } : null,
      );
      return;
    }
    if (!hit) return;
    const depth =
      this.rig.projection === 'parallel' ? this.rig.pose.distance : hit.point.distanceTo(this.rig.eye());
    const perPixel = (this.rig.span_mm * depth) / this.rig.pose.distance / this.stage.height;
    this.ruler.pick(this.loaded.model, this.loaded.picker, hit, perPixel, this.options.measurementWords);
  }

  private readonly lost = (event: Event): void => {
    event.preventDefault();
    this.emit('context', 'lost');
  };

  private readonly restored = (): void => {
    this.emit('context', 'restored');
    this.setSheet(this.stage.sheetName);
    this.loop.request();
  };
}
