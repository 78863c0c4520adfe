import { samplingLimitById } from '@coveline/catalogue';
import type { SamplingPoint, Trend } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show, showDay } from '../../numbers/show.ts';
import { Chart } from '../calculations/chart.tsx';
import '../calculations/calculations.css';

interface Props {
  readonly trend: Trend;
  readonly points: readonly SamplingPoint[];
  readonly onRemove: (id: string) => void;
}

/** The results of one point and test: each with its verdict, and the chart as soon as data give its limits. */
export function TrendView({ trend, points, onRemove }: Props) {
  const words = m.proof.trend;
  const name = points.find((p) => p.id === trend.point)?.name ?? words.gone;
  const title = `${name}: ${m.proof.measured[trend.of]}`;
  const { chart } = trend;
  return (
    <section className="trend">
      <h3>{title}</h3>
      {chart ? (
        <>
          <Chart
            chart={{
              title,
              across: words.across,
              unit: words.logarithm,
              x: trend.results.map((_, i) => i + 1),
              series: [
                { name: words.results, values: trend.results.map((r) => logOf(r.result)) },
                { name: words.mean, values: trend.results.map(() => chart.mean) },
                { name: words.upper, values: trend.results.map(() => chart.upper) },
              ],
            }}
          />
          {chart.alarms.map((a) => (
            <p key={a.index} className="missing">
              {words.alarm(showDay(trend.results[a.index].result.on), a.rules)}
            </p>
          ))}
        </>
      ) : null}
      {trend.notes.map((note) => (
        <p key={note} className="soft">
          {note}
        </p>
      ))}
      <table className="sheet-table">
        <caption className="unseen">{title}</caption>
        <thead>
          <tr>
            <th scope="col">{words.columns.on}</th>
            <th scope="col">{words.columns.value}</th>
            <th scope="col">{words.columns.verdict}</th>
            <th scope="col">{words.columns.by}</th>
            <th scope="col">
              <span className="unseen">{words.remove}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {trend.results.map(({ result, verdict, reason }) => {
            const unit = samplingLimitById.get(result.limit)?.unit ?? '1';
            const value =
              result.value === null
                ? words.below(result.detectionLimit === null ? '' : show(result.detectionLimit, unit))
                : show(result.value, unit);
            return (
              <tr key={result.id}>
                <th scope="row">{showDay(result.on)}</th>
                <td>{value}</td>
                <td>
                  <strong>{words.verdicts[verdict]}</strong> <span className="soft">{reason}</span>
                </td>
                <td>{[result.by, result.note].filter(Boolean).join(', ')}</td>
                <td>
                  <button
                    type="button"
                    className="quiet"
                    aria-label={words.removeNamed(showDay(result.on))}
                    onClick={() => onRemove(result.id)}
                  >
                    ✕
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

const logOf = ({ value, detectionLimit }: Trend['results'][number]['result']): number =>
  Math.log10(value !== null && value > 0 ? value : (detectionLimit ?? 1) / 2);
