import { QueryClientProvider } from '@tanstack/react-query';
import { m } from './messages/index.ts';
import { useRoute } from './routing/use-route.ts';
import { MachineScreen } from './screens/machine/machine-screen.tsx';
import { StartScreen } from './screens/start/start-screen.tsx';
import { LiveRegion } from './shell/live-region.tsx';
import { Trouble } from './shell/trouble.tsx';
import { useLiveUpdates } from './state/live.ts';
import { queryClient } from './state/queries.ts';

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
  switch (route.at) {
    case 'start':
      return <StartScreen />;
    case 'machine':
      return <MachineScreen route={route} />;
    case 'nowhere':
      return <Trouble error={new Error(m.problem.noSuchPage(route.path))} toStart />;
  }
}
