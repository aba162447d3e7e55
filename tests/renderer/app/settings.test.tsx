import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Router } from 'wouter';
import type { PendingRemoval } from '../../../src/domain/removal.ts';
import { SettingsDialog } from '../../../src/renderer/app/SettingsDialog.tsx';
import { RemovedProvider } from '../../../src/renderer/removing/RemovedProvider.tsx';

/** The text of the dialog over an archive with these records that cannot be read. */
function shown(unreadableRecords: readonly string[], removed: readonly PendingRemoval[] = []): string {
  const client = new QueryClient();
  client.setQueryData(['GET /api/preferences', null, null], { theme: 'system', inches: false, observer: '' });
  client.setQueryData(['GET /api/removals', null, null], removed);
  const holds = { specimens: 2, samples: 0, photos: 1, unfinishedFiles: 0, unreadableRecords };
  client.setQueryData(['GET /api/about', null, null], { version: '1.2.3', archiveFolder: '/cabinet', today: '2026-01-01', ...holds });
  const html = renderToStaticMarkup(
    <QueryClientProvider client={client}>
      <Router ssrPath="/cabinet">
        <RemovedProvider>
          <SettingsDialog onClose={() => undefined} />
        </RemovedProvider>
      </Router>
    </QueryClientProvider>,
  );
  return html.replace(/<[^>]+>/g, ' ');
}

describe('the settings', () => {
  test('say where the archive lies and what it holds', () => {
    expect(shown([])).toMatch(/\/cabinet.*2 specimens, +1 photo/);
    expect(shown([])).not.toContain('cannot be read');
  });

  test('list what was removed and can be put back, with what comes back with it', () => {
    const counts = {
      specimens: 0,
      molts: 1,
      exuviae: 1,
      photos: 0,
      photosUnassigned: 2,
      readings: 0,
      determinations: 3,
      observations: 0,
      liveSigns: 0,
    };
    const thing = { kind: 'molt', code: 'G-012', happenedFrom: '2026-03-05', happenedTo: '2026-03-05' } as const;
    const words = shown([], [{ ...counts, id: 'removal-1', at: '2026-03-06T12:00:00.000Z', thing }]).replace(/\s+/g, ' ');
    expect(words).toContain('The molt of 5 Mar 2026 of G-012 with 1 skin and 3 determinations Put back');
    expect(shown([])).toContain('Nothing was removed since Exuviary was started.');
  });

  test('name every record that cannot be read', () => {
    expect(shown(['molt 7: notes: Expected text'])).toContain('1 record cannot be read and is left out everywhere.');
    const two = shown(['molt 7: notes: Expected text', 'photo 8: a document in it is not JSON']);
    expect(two).toContain('2 records cannot be read and are left out everywhere.');
    expect(two).toContain('photo 8: a document in it is not JSON');
  });
});
