import type { GroupReview, MaterialVerdict } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { mediumName } from './step-table.tsx';

/** What each material stands; what is suitable is folded away. */
export function MaterialVerdicts({ review }: { readonly review: GroupReview }) {
  const words = m.cleaning;
  const suspect = review.materials.filter((v) => v.verdict !== 'suitable');
  const suitable = review.materials.filter((v) => v.verdict === 'suitable');
  if (review.materials.length === 0) return null;
  return (
    <>
      <h3>{words.materials}</h3>
      {suspect.length === 0 ? (
        <p className="soft">{words.allSuitable}</p>
      ) : (
        <Table review={review} rows={suspect} />
      )}
      {suitable.length > 0 ? (
        <details>
          <summary>{words.suitable(suitable.length)}</summary>
          <Table review={review} rows={suitable} />
        </details>
      ) : null}
    </>
  );
}

interface TableProps {
  readonly review: GroupReview;
  readonly rows: readonly MaterialVerdict[];
}

function Table({ review, rows }: TableProps) {
  const columns = m.cleaning.materialColumns;
  return (
    <table className="sheet-table">
      <caption className="unseen">{`${review.group.name}: ${m.cleaning.materials}`}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.material}</th>
          <th scope="col">{columns.step}</th>
          <th scope="col">{columns.verdict}</th>
          <th scope="col">{columns.contact}</th>
          <th scope="col">{columns.why}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((v) => (
          <tr key={`${v.material}${v.step}`}>
            <th scope="row">
              {v.name}
              <div className="soft">{m.cleaning.parts(v.parts.length)}</div>
            </th>
            <td>{`${v.step + 1} ${mediumName(review.group.steps[v.step].medium)}`}</td>
            <td className={`verdict verdict-${v.verdict}`}>{m.cleaning.verdicts[v.verdict]}</td>
            <td className="figure">{show(v.contact_hyr, 'h')}</td>
            <td>
              {v.text} <span className="soft">{v.source}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
