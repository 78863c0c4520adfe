import type { Viewer } from '@coveline/viewer';
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react';
import { m } from '../../../messages/index.ts';
import type { ElevationScale } from './scale.ts';

interface Props {
  readonly viewer: Viewer;
  readonly scale: ElevationScale;
  /** Height of the floor in the frame of the model. */
  readonly floor_mm: number;
  /** Heights of the findings above the floor. */
  readonly heights: readonly number[];
  readonly words: (height_mm: number) => string;
}

/** The height of the view as a slider: drag, wheel, arrow keys; Page Up and Down go from finding to finding. */
export function HeightHandle({ viewer, scale, floor_mm, heights, words }: Props) {
  const [height, setHeight] = useState(0);
  const [visible, setVisible] = useState<readonly [number, number]>([0, 0]);
  const element = useRef<HTMLDivElement>(null);
  const dragging = useRef(false);

  useEffect(() => {
    const follow = (state: ReturnType<Viewer['cameraState']>) => {
      setHeight(state.height_mm - floor_mm);
      setVisible([state.visible_mm[0] - floor_mm, state.visible_mm[1] - floor_mm]);
    };
    follow(viewer.cameraState());
    return viewer.on('camera', follow);
  }, [viewer, floor_mm]);

  const walk = (to: number) => viewer.walkTo(Math.min(scale.top, Math.max(0, to)) + floor_mm);
  useEffect(() => {
    const target = element.current!.parentElement!;
    const wheel = (e: WheelEvent) => {
      e.preventDefault();
      walk(height - Math.sign(e.deltaY) * scale.top * 0.02);
    };
    target.addEventListener('wheel', wheel, { passive: false });
    return () => target.removeEventListener('wheel', wheel);
  });

  const drag = (e: PointerEvent) => {
    if (!dragging.current) return;
    walk(scale.height(e.clientY - element.current!.parentElement!.getBoundingClientRect().top));
  };
  const press = (e: KeyboardEvent) => {
    const slack = scale.top * 1e-3;
    const next: Record<string, number | undefined> = {
      ArrowUp: height + scale.top * 0.02,
      ArrowRight: height + scale.top * 0.02,
      ArrowDown: height - scale.top * 0.02,
      ArrowLeft: height - scale.top * 0.02,
      Home: 0,
      End: scale.top,
      PageUp: Math.min(...heights.filter((h) => h > height + slack), scale.top),
      PageDown: Math.max(...heights.filter((h) => h < height - slack), 0),
    };
    const to = next[e.key];
    if (to === undefined) return;
    e.preventDefault();
    walk(to);
  };
  const clamped = Math.min(scale.top, Math.max(0, height));
  const [bottom, top] = visible.map((h) => scale.y(Math.min(scale.top, Math.max(0, h))));
  return (
    <>
      <div className="elevation-visible" style={{ top, height: Math.max(0, bottom - top) }} />
      <div
        ref={element}
        className="elevation-handle"
        role="slider"
        tabIndex={0}
        aria-label={m.elevation.slider}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={Math.round(scale.top)}
        aria-valuenow={Math.round(clamped)}
        aria-valuetext={words(clamped)}
        title={m.elevation.hint}
        style={{ top: scale.y(clamped) }}
        onKeyDown={press}
        onPointerDown={(e) => {
          dragging.current = true;
          e.currentTarget.setPointerCapture(e.pointerId);
        }}
        onPointerMove={drag}
        onPointerUp={() => {
          dragging.current = false;
        }}
      />
    </>
  );
}
