import type { views } from '@coveline/viewer';
import { useEffect, useRef } from 'react';
import { m } from '../messages/index.ts';
import { useViewer } from './viewer-context.ts';

const axes = [
  { name: 'X', direction: [1, 0, 0], view: 'right' },
  { name: 'Y', direction: [0, 1, 0], view: 'back' },
  { name: 'Z', direction: [0, 0, 1], view: 'top' },
] as const;
const length = 24;

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
      axes.forEach(({ direction }, index) => {
        const dot = (v: readonly number[]) => direction.reduce((sum: number, d, k) => sum + d * v[k], 0);
        const x = 38 + dot(right) * length;
        const y = 38 - dot(up) * length;
        const line = box.current!.querySelectorAll('line')[index];
        line.setAttribute('x2', String(x));
        line.setAttribute('y2', String(y));
        box.current!.querySelectorAll('button')[index].style.transform =
          `translate(${x - 12}px, ${y - 12}px)`;
      });
    };
    follow(viewer.cameraState());
    return viewer.on('camera', follow);
  }, [viewer]);
  return (
    <div className="triad" ref={box}>
      <svg width="76" height="76" aria-hidden="true">
        {axes.map(({ name }) => (
          <line key={name} x1="38" y1="38" x2="38" y2="38" />
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
