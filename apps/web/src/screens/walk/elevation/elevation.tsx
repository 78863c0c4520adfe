import { bounds } from '@coveline/model';
import { useEffect, useMemo, useRef, useState } from 'react';
import { m } from '../../../messages/index.ts';
import { showWhole } from '../../../numbers/show.ts';
import { useViewer } from '../../../stage/viewer-context.ts';
import { useMachineData } from '../../machine/machine-context.ts';
import { useFindingFilter } from '../filter.ts';
import { shownFindings } from '../shown-findings.ts';
import { areaBands } from './area-bands.ts';
import { Bands } from './bands.tsx';
import { ElevationMarks } from './elevation-marks.tsx';
import { HeightHandle } from './height-handle.tsx';
import { scaleOf } from './scale.ts';
import './elevation.css';

/** The machine from the floor to its top, with every finding at its real height. Moving along it walks the view. */
export function Elevation() {
  const data = useMachineData();
  const viewer = useViewer();
  const { model, parts } = data;
  const filter = useFindingFilter();
  const box = useRef<HTMLDivElement>(null);
  const size = useHeight(box);
  const [low, high] = useMemo(() => (model ? bounds(model) : [null, null]), [model]);
  const bands = useMemo(() => (model ? areaBands(model, parts) : []), [model, parts]);
  if (!low || !high) return <nav className="elevation" ref={box} aria-label={m.elevation.label} />;

  const scale = scaleOf(high[2] - low[2], size);
  const findings = shownFindings(data, filter);
  return (
    <nav className="elevation" ref={box} aria-label={m.elevation.label}>
      <svg className="elevation-scale" width="100%" height={size} aria-hidden="true">
        <path className="elevation-axis" d={`M48.5 ${scale.y(0)}V${scale.y(scale.top)}`} />
        {scale.ticks.map(({ at, labelled }) => (
          <g key={at}>
            <path className="elevation-tick" d={`M${labelled ? 42 : 45} ${scale.y(at)}H48.5`} />
            {labelled ? (
              <text x="39" y={scale.y(at) + 4} textAnchor="end">
                {at}
              </text>
            ) : null}
          </g>
        ))}
        <Bands bands={bands.map((b) => ({ ...b, low: b.low - low[2], high: b.high - low[2] }))} y={scale.y} />
      </svg>
      {viewer ? (
        <HeightHandle
          viewer={viewer}
          scale={scale}
          floor_mm={low[2]}
          heights={findings.map((f) => f.height_mm)}
          words={(height) =>
            m.elevation.value(
              showWhole(height),
              findings.filter((f) => Math.abs(f.height_mm - height) < scale.top * 0.04).length,
            )
          }
        />
      ) : null}
      <ElevationMarks findings={findings} y={scale.y} />
    </nav>
  );
}

function useHeight(box: React.RefObject<HTMLElement | null>): number {
  const [height, setHeight] = useState(400);
  useEffect(() => {
    const observer = new ResizeObserver(([entry]) => {
      if (entry.contentRect.height > 0) setHeight(Math.floor(entry.contentRect.height));
    });
    observer.observe(box.current!);
    return () => observer.disconnect();
  }, [box]);
  return height;
}
