import type { Vec3 } from '@coveline/model';
import type { Pose } from './camera/rig.ts';
import type { Measurement } from './measure/measurement.ts';

export interface ViewerEvents {
  /** Somebody clicked on a part, or beside all of them (null). */
  pick: { part: string; at: Vec3; triangle: number } | null;
  camera: CameraState;
  /** A measurement is complete, or its first point is set (null). */
  measured: Measurement | null;
  /** The browser took the graphics context away, or gave it back. */
  context: 'lost' | 'restored';
}

export interface CameraState {
  readonly azimuth: Pose['azimuth'];
  readonly elevation: Pose['elevation'];
  /** Height above the model's zero of what the camera looks at, and of the lower and upper border of the picture, mm. */
  readonly height_mm: number;
  readonly visible_mm: readonly [number, number];
  /** Size of the model against its picture at 96 dots an inch: 6 for 1 : 6. */
  readonly scale: number;
}

type Listener<T> = (value: T) => void;

/** Typed listeners, one list per event. */
export class Emitter<Events extends object> {
  private readonly listeners = new Map<keyof Events, Set<Listener<never>>>();

  /** Returns what takes the listener off again. */
  on<K extends keyof Events>(event: K, listener: Listener<Events[K]>): () => void {
    const all = this.listeners.get(event) ?? new Set();
    this.listeners.set(event, all.add(listener as Listener<never>));
    return () => all.delete(listener as Listener<never>);
  }

  emit<K extends keyof Events>(event: K, value: Events[K]): void {
    for (const listener of this.listeners.get(event) ?? []) (listener as Listener<Events[K]>)(value);
  }
}
