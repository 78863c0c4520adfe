import { samplingLimitById, samplingMethodById } from '@coveline/catalogue';
import type { PointTest, SamplingPoint } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import { useMachineData } from '../machine/machine-context.ts';
import { ResultsSection } from './results-section.tsx';
import './proof.css';
import { Numbers } from '../walk/slip/numbers.tsx';

/** Where samples are taken, by which method, against which limit. */
export function ProofPage() {
  const { review } = useMachineData();
  const words = m.proof;
  const plan = review?.proof;
  return (
    <div className="page page-wide">
      <h1>{words.title}</h1>
      <p className="soft">{words.intro}</p>
      {plan ? null : <p className="empty">{words.notReviewed}</p>}
      {plan?.validation ? (
        <section>
          <h2>{words.validation}</h2>
          <Numbers numbers={[plan.validation]} />
          <p>{words.validationText(show(plan.validation.value, '1', 6))}</p>
        </section>
      ) : null}
      {plan ? (
        <>
          <section>
            <h2>{words.points}</h2>
            {plan.points.length === 0 ? (
              <p className="empty">{words.none}</p>
            ) : (
              <PointTable points={plan.points} />
            )}
          </section>
          <section>
            <h2>{words.stages}</h2>
            <dl>
              {plan.stages.map((s) => (
                <div key={s.name}>
                  <dt>
                    <strong>{s.name}</strong>
                  </dt>
                  <dd>{s.text}</dd>
                </div>
              ))}
            </dl>
          </section>
          {plan.points.length > 0 ? <ResultsSection points={plan.points} /> : null}
        </>
      ) : null}
    </div>
  );
}

function PointTable({ points }: { readonly points: readonly SamplingPoint[] }) {
  const { route } = useMachineData();
  const words = m.proof;
  const { columns } = words;
  return (
    <table className="sheet-table">
      <caption className="unseen">{words.points}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.point}</th>
          <th scope="col">{columns.test}</th>
          <th scope="col">{columns.when}</th>
          <th scope="col">{columns.limit}</th>
          <th scope="col">{columns.every}</th>
        </tr>
      </thead>
      <tbody>
        {points.flatMap((p) =>
          p.tests.map((t, i) => (
            <tr key={`${p.id}${t.method}${t.of}`}>
              {i === 0 ? (
                <th scope="rowgroup" rowSpan={p.tests.length}>
                  {p.name}
                  <div className="soft">{p.reason}</div>
                  <Link to={{ ...route, page: 'walk', item: p.finding }} aria-label={words.showNamed(p.name)}>
                    {words.show}
                  </Link>
                </th>
              ) : null}
              <TestCells test={t} />
              {i === 0 ? <td rowSpan={p.tests.length}>{words.everyDays(p.everyDays)}</td> : null}
            </tr>
          )),
        )}
      </tbody>
    </table>
  );
}

function TestCells({ test }: { readonly test: PointTest }) {
  const words = m.proof;
  const method = samplingMethodById.get(test.method)!;
  const limit = samplingLimitById.get(test.limit)!;
  const value = (v: number) => show(v, limit.unit);
  return (
    <>
      <td>
        {words.looksFor(method.name, words.measured[test.of])}
        {test.neutraliser ? `, ${words.neutraliser}` : ''}
        <div className="soft">{method.trap}</div>
      </td>
      <td>{words.when[test.when]}</td>
      <td>
        {limit.actAbove === 0 ? words.notDetected : words.actAbove(value(limit.actAbove))}
        {limit.alertAbove === undefined ? '' : `, ${words.alertAbove(value(limit.alertAbove))}`}
        <div className="soft">{limit.standing}</div>
      </td>
    </>
  );
}
