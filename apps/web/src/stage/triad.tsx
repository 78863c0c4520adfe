import type { views } from '@coveline/viewer';
import { useEffect, useRef } from 'react';
import { m } from '../messages/index.ts';
import { useViewer } from './viewer-context.ts';

const axes = [
  { name: 'X', direction: [1, 0, 0], view: 'right' },
  { name: 'Y', direction: [0, 1, 0], view: 'back' },
  { name: 'Z', direction: [0, 0, 1], view: 'top' },
] as const;
const length = 49;
const middle = 63;
/** Nearer to each other than this, two ends cannot be told apart by a finger. */
const room_px = 24;

/** Where the axes of the model point now; each end looks along its axis. */
export function Triad() {
  const viewer = useViewer();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!viewer || !box.current) return;
    const follow = ({ azimuth, elevation }: { readonly azimuth: number; readonly elevation: number }) => {
      const right = [-Math.sin(azimuth), Math.cos(azimuth), 0];
      const up = [
        -Math.sin(elevation) * Math.cos(azimuth),
        -Math.sin(elevation) * Math.sin(azimuth),
        Math.cos(elevation),
      ];
      const placed: { x: number; y: number }[] = [];
      axes.forEach(({ direction }, index) => {
        const dot = (v: readonly number[]) => direction.reduce((sum: number, d, k) => sum + d * v[k], 0);
        const x = middle + dot(right) * length;
        const y = middle - dot(up) * length;
        const line = box.current!.querySelectorAll('line')[index];
        line.setAttribute('x2', String(x));
        line.setAttribute('y2', String(y));
        const button = box.current!.querySelectorAll('button')[index];
        button.style.transform = `translate(${x - 12}px, ${y - 12}px)`;
        // An axis that points at the eye hides behind another: the row of named views still has it.
        button.hidden = placed.some((p) => Math.max(Math.abs(p.x - x), Math.abs(p.y - y)) < room_px);
        if (!button.hidden) placed.push({ x, y });
      });
    };
    follow(viewer.cameraState());
    return viewer.on('camera', follow);
  }, [viewer]);
  return (
    <div className="triad" ref={box}>
      <svg width={2 * middle} height={2 * middle} aria-hidden="true">
        {axes.map(({ name }) => (
          <line key={name} x1={middle} y1={middle} x2={middle} y2={middle} />
        ))}
      </svg>
      {axes.map(({ name, view }) => (
        <button
          key={name}
          type="button"
          aria-label={m.view.lookFrom(`${m.view.views[view]} (${name})`)}
          onClick={() => viewer?.view(view as keyof typeof views)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}
