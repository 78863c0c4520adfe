import { m } from '../../../messages/index.ts';
import type { Band } from './area-bands.ts';

interface Props {
  /** Heights above the floor. */
  readonly bands: readonly Band[];
  readonly y: (height_mm: number) => number;
}

/** Food area beside the scale, splash area beside that: told by place and pattern, and named where there is room. */
export function Bands({ bands, y }: Props) {
  return (
    <>
      <pattern
        id="splash-hatch"
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path className="band-hatch" d="M0 0V5" />
      </pattern>
      {bands.map((band) => {
        const left = band.area === 'food' ? 50 : 57;
        const length = y(band.low) - y(band.high);
        return (
          <g key={`${band.area} ${band.low}`}>
            <rect
              className={`band band-${band.area}`}
              x={left}
              y={y(band.high)}
              width="6"
              height={Math.max(1, length)}
              {...(band.area === 'splash' ? { fill: 'url(#splash-hatch)' } : {})}
            >
              <title>{m.areas[band.area]}</title>
            </rect>
          </g>
        );
      })}
    </>
  );
}
