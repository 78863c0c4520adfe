import { Viewer } from '@coveline/viewer';
import { useEffect, useRef, useState } from 'react';
import { m } from '../messages/index.ts';
import { onSheetChange, preferences, sheetNow } from '../state/preferences.ts';
import { measurementWords } from './measurement-words.ts';

interface Props {
  readonly onViewer: (viewer: Viewer | null) => void;
}

const still = window.matchMedia('(prefers-reduced-motion: reduce)');

/** The element that the view lives in. It stays when pages change, so that the model is fetched and built once. */
export function Stage({ onViewer }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [trouble, setTrouble] = useState<string | null>(null);

  useEffect(() => {
    let viewer: Viewer;
    try {
      viewer = new Viewer(host.current!, {
        sheet: sheetNow(),
        antialias: preferences().antialias,
        reducedMotion: still.matches,
        measurementWords,
      });
    } catch (error) {
      console.warn('No 3D view:', error);
      setTrouble(m.view.noGraphics);
      return;
    }
    const offs = [
      onSheetChange(() => viewer.setSheet(sheetNow())),
      viewer.on('context', (state) => setTrouble(state === 'lost' ? m.view.lost : null)),
    ];
    const motion = () => viewer.setReducedMotion(still.matches);
    still.addEventListener('change', motion);
    onViewer(viewer);
    return () => {
      onViewer(null);
      still.removeEventListener('change', motion);
      for (const off of offs) off();
      viewer.dispose();
    };
  }, [onViewer]);

  return (
    <>
      <div
        ref={host}
        className="stage"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys turn the model here.
        tabIndex={0}
        aria-label={m.view.label}
        aria-describedby="stage-keys"
      />
      <p id="stage-keys" className="unseen">
        {m.view.keys}
      </p>
      {trouble ? (
        <p className="stage-note" role="status">
          {trouble}
        </p>
      ) : null}
    </>
  );
}
