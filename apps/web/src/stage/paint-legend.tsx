import { m } from '../messages/index.ts';
import { show } from '../numbers/show.ts';
import { usePainted } from './painted.ts';

/** What the paint on the surface means. */
export function PaintLegend() {
  const painted = usePainted();
  if (!painted) return null;
  return (
    <p className="view-state">
      {painted.measure}
      <span className="figure">{show(0, painted.unit)}</span>
      <span
        className="legend-bar"
        role="img"
        aria-label={m.view.legend}
        style={{ background: `linear-gradient(90deg, ${painted.from}, ${painted.to})` }}
      />
      <span className="figure">{show(painted.high, painted.unit)}</span>
    </p>
  );
}
