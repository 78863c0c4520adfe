import { type Decision, standingOf } from '@coveline/project';
import type { Finding } from '@coveline/review';
import { useEffect, useRef } from 'react';
import { GridList, GridListHeader, GridListItem, GridListSection } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { show, showWhole, today } from '../../numbers/show.ts';
import { go } from '../../routing/use-route.ts';
import { Notes } from '../../shell/notes.tsx';
import { kindOf } from '../../signs/kind.ts';
import { KindSign } from '../../signs/kind-sign.tsx';
import { useMachineData } from '../machine/machine-context.ts';
import { useFindingFilter } from './filter.ts';
import { FindingFilters } from './finding-filters.tsx';
import { takeLastFinding } from './last-finding.ts';
import { shownFindings } from './shown-findings.ts';
import { WalkTabs } from './walk-tabs.tsx';

const ranks = [1, 2, 3, 4] as const;

/** The findings in words: whatever the view shows can be read and reached here. */
export function FindingsList() {
  const data = useMachineData();
  const shown = shownFindings(data, useFindingFilter());
  const list = useRef<HTMLDivElement>(null);

  // Coming back from a finding, the list is where it was left.
  useEffect(() => {
    const last = takeLastFinding();
    if (last === null) return;
    // The rows of a collection are there one frame after the list itself.
    const frame = requestAnimationFrame(() =>
      list.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(last)}"]`)?.focus(),
    );
    return () => cancelAnimationFrame(frame);
  }, []);

  return (
    <div className="panel">
      <div className="panel-head">
        <WalkTabs />
        <h1 className="unseen">{m.walk.title}</h1>
        {data.review ? (
          <>
            <FindingFilters />
            <p className="soft" role="status">
              {m.walk.count(shown.length, data.findings.length)}. {m.walk.order}
            </p>
          </>
        ) : null}
      </div>
      <Notes title={m.walk.notes} notes={[...(data.review?.notes ?? []), ...(data.survey?.notes ?? [])]} />
      {data.review ? (
        <GridList
          ref={list}
          aria-label={m.walk.title}
          className="findings"
          onAction={(id) => go({ ...data.route, item: String(id) })}
          renderEmptyState={() => (
            <p className="empty">{data.findings.length === 0 ? m.walk.nothing : m.walk.none}</p>
          )}
        >
          {ranks
            .filter((rank) => shown.some((f) => f.consequence.rank === rank))
            .map((rank) => (
              <GridListSection key={rank} id={`rank ${rank}`}>
                <GridListHeader className="findings-rank">{m.ranks[rank]}</GridListHeader>
                {shown
                  .filter((f) => f.consequence.rank === rank)
                  .map((f) => (
                    <FindingRow key={f.id} finding={f} />
                  ))}
              </GridListSection>
            ))}
        </GridList>
      ) : (
        <p className="empty">{m.walk.notReviewed}</p>
      )}
    </div>
  );
}

function FindingRow({ finding }: { readonly finding: Finding }) {
  const { decisions } = useMachineData();
  const kind = kindOf(finding);
  const decision = decisions[finding.id];
  return (
    <GridListItem id={finding.id} textValue={finding.title} className="finding">
      <KindSign kind={kind} />
      <span className="finding-text">
        <span className="finding-title">{finding.title}</span>
        <span className="finding-facts">
          {m.kinds[kind]} · {m.areas[finding.areaClass]} · {m.walk.height(showWhole(finding.height_mm))}
          {finding.status === 'notShown' ? ` · ${m.walk.notShown}` : ''}
        </span>
        <span className="finding-reason">
          {finding.consequence.reason}{' '}
          <span className="figure">
            {finding.consequence.weightLabel}: {show(finding.consequence.weight, '1')}
          </span>
        </span>
      </span>
      <span className={`finding-state${decision ? ' finding-decided' : ''}`}>{stateOf(decision)}</span>
    </GridListItem>
  );
}

function stateOf(decision: Decision | undefined): string {
  const standing = standingOf(decision, today());
  if (!decision || standing === 'open') return m.walk.open;
  return standing === 'stands' ? m.walk.decided[decision.kind] : m.walk.standings[standing];
}
