import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { type ReactElement, useState } from 'react';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { WindowWithBridge } from '../../api/contract/bridge.ts';
import { Refusal } from '../../domain/failure.ts';
import { usePresence } from '../client/presence.ts';
import { hostOf } from '../host/hostOf.ts';
import { UnsentMarksProvider } from '../pages/bench/UnsentMarks.tsx';
import { IntakeProvider } from '../pages/intake/IntakeProvider.tsx';
import { ToastProvider } from '../parts/Toast.tsx';
import { RemovedProvider } from '../removing/RemovedProvider.tsx';
import { Rooms } from './Rooms.tsx';

export function App(): ReactElement {
  const [client] = useState(makeQueryClient);
  const [host] = useState(() => hostOf(window as Window & WindowWithBridge));
  const answers = usePresence();
  return (
    <QueryClientProvider client={client}>
      <Router hook={useHashLocation}>
        <ToastProvider>
          <RemovedProvider>
            <IntakeProvider host={host}>
              <UnsentMarksProvider>
                <Rooms answers={answers} />
              </UnsentMarksProvider>
            </IntakeProvider>
          </RemovedProvider>
        </ToastProvider>
      </Router>
    </QueryClientProvider>
  );
}

/** The archive is local: an answer stays good until a change touches it, and only silence is worth a second try. */
function makeQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: 60_000,
        networkMode: 'always',
        retry: (attempts, error) => attempts < 2 && error instanceof Refusal && error.failure.code === 'unreachable',
      },
      mutations: { networkMode: 'always' },
    },
  });
}
