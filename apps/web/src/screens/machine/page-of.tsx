import { lazy, Suspense } from 'react';
import type { Page } from '../../routing/route.ts';
import { AirPage } from '../air/air-page.tsx';
import { BriefPage } from '../brief/brief-page.tsx';
import { FilePage } from '../file/file-page.tsx';
import { HistoryPage } from '../history/history-page.tsx';
import { ModelPanel } from '../model/model-panel.tsx';
import { RequirementsPage } from '../requirements/requirements-page.tsx';
import { RevisionsPage } from '../revisions/revisions-page.tsx';
import { RoundPage } from '../round/round-page.tsx';
import { SitePage } from '../site/site-page.tsx';
import { WalkPanel } from '../walk/walk-panel.tsx';

/** Brings every calculation with it. */
/** Brings the judgement of steps and materials with it. */
const CleaningPage = lazy(() =>
  import('../cleaning/cleaning-page.tsx').then((file) => ({ default: file.CleaningPage })),
);
const ProofPage = lazy(() => import('../proof/proof-page.tsx').then((file) => ({ default: file.ProofPage })));
const KeptPage = lazy(() => import('../kept/kept-page.tsx').then((file) => ({ default: file.KeptPage })));

/** The page that an address names. */
export function PageOf({ page }: { readonly page: Page }) {
  switch (page) {
    case 'brief':
      return <BriefPage />;
    case 'model':
      return <ModelPanel />;
    case 'walk':
      return <WalkPanel />;
    case 'round':
      return <RoundPage />;
    case 'requirements':
      return <RequirementsPage />;
    case 'revisions':
      return <RevisionsPage />;
    case 'history':
      return <HistoryPage />;
    case 'calculations':
      return (
        <Suspense>
          <KeptPage />
        </Suspense>
      );
    case 'site':
      return <SitePage />;
    case 'file':
      return <FilePage />;
    case 'cleaning':
      return (
        <Suspense>
          <CleaningPage />
        </Suspense>
      );
    case 'proof':
      return (
        <Suspense>
          <ProofPage />
        </Suspense>
      );
    case 'air':
      return <AirPage />;
  }
}
