import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../../messages/index.ts';
import { showWhole } from '../../../numbers/show.ts';
import { Link } from '../../../routing/link.tsx';
import { kindOf } from '../../../signs/kind.ts';
import { KindSign } from '../../../signs/kind-sign.tsx';
import { useViewer } from '../../../stage/viewer-context.ts';
import { useMachineData } from '../../machine/machine-context.ts';
import { DecisionPart } from '../decision/decision-part.tsx';
import { useFindingFilter } from '../filter.ts';
import { leaveFinding } from '../last-finding.ts';
import { shownFindings } from '../shown-findings.ts';
import { flyAgain } from '../use-findings-in-view.ts';
import { Beside } from './beside.tsx';
import { Demand } from './demand.tsx';
import { Numbers } from './numbers.tsx';
import { OptionsCompared } from './options-compared.tsx';
import { Remedies } from './remedies.tsx';
import { Tilts } from './tilts.tsx';

/** One finding as an argument: what is wrong, by how much, why it matters, what is demanded, what can be done. */
export function Slip({ finding: id }: { readonly finding: string }) {
  const data = useMachineData();
  const viewer = useViewer();
  const filter = useFindingFilter();
  const title = useRef<HTMLHeadingElement>(null);
  const finding = data.findings.find((f) => f.id === id);
  const [option, setOption] = useState('');
  const list = { ...data.route, item: null };

  const present = finding !== undefined;

  // A reader hears which finding came up; the focus goes with it.
  useEffect(() => {
    if (!present) return;
    title.current?.focus();
    return () => leaveFinding(id);
  }, [id, present]);

  if (!finding)
    return (
      <div className="panel slip">
        <p>
          <Link to={list}>{m.slip.all}</Link>
        </p>
        <p className="empty">{data.review ? m.slip.gone : m.walk.notReviewed}</p>
      </div>
    );
  const kind = kindOf(finding);
  const tilts = data.survey?.measures.standingLiquid?.tilts;
  const shown = shownFindings(data, filter);
  return (
    <article className="panel slip" aria-labelledby="slip-title">
      <SlipPager shown={shown.map((f) => f.id)} id={id} />
      <p className="slip-kind">
        <KindSign kind={kind} size={20} />
        <span>
          {m.kinds[kind]} · {m.slip.areaAndHeight(m.areas[finding.areaClass], showWhole(finding.height_mm))}
          {finding.status === 'notShown' ? ` · ${m.walk.notShown}` : ''}
        </span>
        <Button className="quiet" onPress={() => flyAgain(viewer, finding, data.drawings)}>
          {m.slip.flyAgain}
        </Button>
      </p>
      <h1 id="slip-title" ref={title} tabIndex={-1}>
        {finding.title}
      </h1>
      <Numbers numbers={finding.numbers} />
      {tilts && finding.measure === 'standingLiquid' ? <Tilts tilts={tilts} /> : null}
      <h2>{m.slip.why}</h2>
      <p>{finding.why}</p>
      <Demand demand={finding.demand} requirement={finding.requirement} />
      <Remedies remedies={finding.remedies} chosen={option} onChoose={setOption} />
      <OptionsCompared key={id} finding={finding} onChoose={setOption} />
      {finding.conflict ? (
        <>
          <h2>{m.slip.conflict}</h2>
          <p>
            {finding.conflict.reason} {m.slip.control(finding.conflict.control)}
          </p>
        </>
      ) : null}
      <DecisionPart finding={finding} option={option} onOption={setOption} />
      <h2>{m.slip.order}</h2>
      <p>{finding.consequence.reason}</p>
      {finding.caveats.length > 0 ? (
        <>
          <h2>{m.slip.caveats}</h2>
          <ul className="plain">
            {finding.caveats.map((c) => (
              <li key={c}>{c}</li>
            ))}
          </ul>
        </>
      ) : null}
      <Beside finding={finding} />
    </article>
  );
}

/** Back to the list, and on to the neighbours. */
function SlipPager({ shown, id }: { readonly shown: readonly string[]; readonly id: string }) {
  const { route } = useMachineData();
  const at = shown.indexOf(id);
  return (
    <nav className="slip-pager" aria-label={m.walk.title}>
      <Link to={{ ...route, item: null }}>← {m.slip.all}</Link>
      <span className="top-space" />
      {at >= 0 ? (
        <>
          <Link
            className="button quiet"
            to={{ ...route, item: shown[(at - 1 + shown.length) % shown.length] }}
            aria-label={m.slip.previous}
          >
            ↑
          </Link>
          <span className="figure soft">{m.slip.position(at + 1, shown.length)}</span>
          <Link
            className="button quiet"
            to={{ ...route, item: shown[(at + 1) % shown.length] }}
            aria-label={m.slip.next}
          >
            ↓
          </Link>
        </>
      ) : null}
    </nav>
  );
}
