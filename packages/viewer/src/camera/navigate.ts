import type { Vector3 } from 'three';
import type { Flight } from './flight.ts';
import type { CameraRig } from './rig.ts';

const turnPerPicture = Math.PI * 1.1;
const step = Math.PI / 24;
/** A pointer that moved less than this between down and up was a click. */
const clickSlack_px = 4;

export interface NavigationHost {
  readonly element: HTMLElement;
  readonly rig: CameraRig;
  readonly flight: Flight;
  /** What the camera turns about and zooms to: the point under the pointer, or the last one. */
  pivotAt(x: number, y: number): Vector3;
  clicked(x: number, y: number): void;
  fit(): void;
}

/** Pointer, wheel, touch and arrow keys on the view. Returns what takes the listeners off again. */
export function navigate(host: NavigationHost): () => void {
  const { element, rig, flight } = host;
  const pointers = new Map<number, { x: number; y: number }>();
  let pivot: Vector3 | null = null;
  let moved = 0;
  let panning = false;
  const off = new AbortController();
  const local = (e: { clientX: number; clientY: number }) => {
    const box = element.getBoundingClientRect();
    return { x: e.clientX - box.left, y: e.clientY - box.top };
  };
  const on = <K extends keyof HTMLElementEventMap>(type: K, run: (e: HTMLElementEventMap[K]) => void) =>
    element.addEventListener(type, run, { signal: off.signal, passive: false });

  on('pointerdown', (e) => {
    if ((e.target as Element).closest('[data-pin]')) return;
    element.setPointerCapture(e.pointerId);
    const at = local(e);
    pointers.set(e.pointerId, at);
    flight.stop();
    if (pointers.size > 1) return;
    moved = 0;
    panning = e.button !== 0 || e.shiftKey;
    pivot = host.pivotAt(at.x, at.y);
  });

  on('pointermove', (e) => {
    const at = local(e);
    const before = pointers.get(e.pointerId);
    if (!before) return;
    const height = element.clientHeight || 1;
    const dx = at.x - before.x;
    const dy = at.y - before.y;
    moved += Math.abs(dx) + Math.abs(dy);
    if (pointers.size === 2) {
      const other = [...pointers].find(([id]) => id !== e.pointerId)![1];
      const was = Math.hypot(before.x - other.x, before.y - other.y);
      const is = Math.hypot(at.x - other.x, at.y - other.y);
      if (is > 1) rig.zoom(pivot!, was / is);
      rig.pan(dx / height / 2, -dy / height / 2, pivot!);
    } else if (moved > clickSlack_px) {
      if (panning) rig.pan(dx / height, -dy / height, pivot!);
      else rig.orbit(pivot!, (-dx / height) * turnPerPicture, (dy / height) * turnPerPicture);
    }
    pointers.set(e.pointerId, at);
  });

  const release = (e: PointerEvent) => {
    const at = pointers.get(e.pointerId);
    pointers.delete(e.pointerId);
    if (at && pointers.size === 0 && moved <= clickSlack_px && e.type === 'pointerup' && e.button === 0)
      host.clicked(at.x, at.y);
  };
  on('pointerup', release);
  on('pointercancel', release);
  on('contextmenu', (e) => e.preventDefault());

  on('wheel', (e) => {
    e.preventDefault();
    flight.stop();
    const at = local(e);
    const lines = e.deltaMode === 1 ? e.deltaY * 24 : e.deltaY;
    rig.zoom(host.pivotAt(at.x, at.y), Math.exp(Math.min(120, Math.max(-120, lines)) * 0.0022));
  });

  on('keydown', (e) => {
    if (e.target !== element || e.ctrlKey || e.metaKey || e.altKey) return;
    const middle = host.pivotAt(element.clientWidth / 2, element.clientHeight / 2);
    const arrows: Record<string, readonly [number, number]> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, 1],
      ArrowDown: [0, -1],
    };
    const arrow = arrows[e.key];
    if (arrow && e.shiftKey) rig.pan(-arrow[0] * 0.08, -arrow[1] * 0.08, middle);
    else if (arrow) rig.orbit(middle, arrow[0] * step, arrow[1] * step);
    else if (e.key === '+' || e.key === '=') rig.zoom(middle, 0.85);
    else if (e.key === '-') rig.zoom(middle, 1 / 0.85);
    else if (e.key === 'Home') host.fit();
    else return;
    e.preventDefault();
  });

  return () => off.abort();
}
