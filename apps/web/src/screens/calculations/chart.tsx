import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { type ChartData, ticksOf } from './chart-of.ts';

const width = 560;
const height = 230;
const left = 52;
const right = width - 12;
const top = 22;
const bottom = height - 40;

/** Lines differ by their dashes first; the tone only repeats it. */
const strokes = [
  { stroke: 'var(--do)' },
  { stroke: 'var(--liquid)', strokeDasharray: '7 3' },
  { stroke: 'var(--gap)', strokeDasharray: '2 3' },
  { stroke: 'var(--corner)', strokeDasharray: '9 3 2 3' },
];

/** The rows of a table as lines. */
export function Chart({ chart }: { readonly chart: ChartData }) {
  const { x, series, unit, across } = chart;
  const all = series.flatMap((s) => extremes(s.values));
  const yTicks = ticksOf(Math.min(...all), Math.max(...all));
  const xTicks = ticksOf(x[0], x[x.length - 1]).filter((t) => t >= x[0] && t <= x[x.length - 1]);
  const toX = (value: number) => left + ((value - x[0]) / (x[x.length - 1] - x[0])) * (right - left);
  const [low, high] = [yTicks[0], yTicks[yTicks.length - 1]];
  const toY = (value: number) => bottom - ((value - low) / (high - low)) * (bottom - top);
  const names = series.map((s) => s.name).join(', ');
  return (
    <figure className="calc-chart">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={m.calculations.chart(chart.title, across, names)}
      >
        {yTicks.map((t) => (
          <g key={t}>
            <path className="calc-grid" d={`M${left} ${toY(t)}H${right}`} />
            <text x={left - 6} y={toY(t) + 4} textAnchor="end">
              {show(t, '1', 6)}
            </text>
          </g>
        ))}
        {xTicks.map((t) => (
          <g key={t}>
            <path className="calc-grid" d={`M${toX(t)} ${bottom}v4`} />
            <text x={toX(t)} y={bottom + 17} textAnchor="middle">
              {show(t, '1', 6)}
            </text>
          </g>
        ))}
        <text x={right} y={height - 6} textAnchor="end">
          {across}
        </text>
        {unit === '' ? null : (
          <text x={left} y={12}>
            {unit}
          </text>
        )}
        {series.map((s, i) => (
          <path
            key={s.name}
            className="calc-line"
            {...strokes[i % strokes.length]}
            d={s.values
              .map((v, k) => `${k === 0 ? 'M' : 'L'}${toX(x[k]).toFixed(1)} ${toY(v).toFixed(1)}`)
              .join('')}
          />
        ))}
      </svg>
      <figcaption>
        {series.map((s, i) => (
          <span key={s.name}>
            <svg viewBox="0 0 28 8" width="28" height="8" aria-hidden="true">
              <path className="calc-line" d="M0 4H28" {...strokes[i % strokes.length]} />
            </svg>
            {s.name}
          </span>
        ))}
      </figcaption>
    </figure>
  );
}

/** Lowest and highest; a spread over many thousand values would overflow the stack. */
function extremes(values: readonly number[]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return [low, high];
}
