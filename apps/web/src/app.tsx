import { QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import { m } from './messages/index.ts';
import { useRoute } from './routing/use-route.ts';
import { StartScreen } from './screens/start/start-screen.tsx';
import { LiveRegion } from './shell/live-region.tsx';
import { Trouble } from './shell/trouble.tsx';
import { useLiveUpdates } from './state/live.ts';
import { queryClient } from './state/queries.ts';
import { useSendWaiting } from './state/send-waiting.ts';

/** Brings the 3D view with it, which the start does not need. */
const MachineScreen = lazy(() =>
  import('./screens/machine/machine-screen.tsx').then((file) => ({ default: file.MachineScreen })),
);

/** Brings every calculation with it. */
const CalculationsScreen = lazy(() =>
  import('./screens/calculations/calculations-screen.tsx').then((file) => ({
    default: file.CalculationsScreen,
  })),
);

export function App() {
  return (
    <QueryClientProvider client={queryClient}>
      <a className="skip" href="#main">
        {m.top.skip}
      </a>
      <Screen />
      <LiveRegion />
    </QueryClientProvider>
  );
}

function Screen() {
  const route = useRoute();
  useLiveUpdates();
  useSendWaiting();
  switch (route.at) {
    case 'start':
      return <StartScreen />;
    case 'machine':
      return (
        <Suspense>
          <MachineScreen route={route} />
        </Suspense>
      );
    case 'calculations':
      return (
        <Suspense>
          <CalculationsScreen name={route.name} kept={route.kept} />
        </Suspense>
      );
    case 'nowhere':
      return <Trouble error={new Error(m.problem.noSuchPage(route.path))} toStart />;
  }
}
