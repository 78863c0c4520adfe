import { m } from '../messages/index.ts';
import { show } from '../numbers/show.ts';
import { usePainted } from './painted.ts';

/** What the paint on the surface means. */
export function PaintLegend() {
  const painted = usePainted();
  if (!painted) return null;
  const { scale } = painted;
  if (scale === null)
    return (
      <p className="view-state">
        <span className="legend-bar" aria-hidden="true" style={{ background: painted.full }} />
        {painted.measure}
      </p>
    );
  return (
    <p className="view-state">
      {painted.measure}
      <span className="figure">{show(scale.pale, painted.unit)}</span>
      <span
        className="legend-bar"
        role="img"
        aria-label={m.view.legend}
        style={{ background: `linear-gradient(90deg, ${painted.pale}, ${painted.full})` }}
      />
      <span className="figure">{show(scale.full, painted.unit)}</span>
    </p>
  );
}
