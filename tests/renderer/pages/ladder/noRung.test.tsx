import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import { type LivePhoto, placeLiveSizes } from '../../../../src/domain/growth/liveSizes.ts';
import { NoRung } from '../../../../src/renderer/pages/ladder/NoRung.tsx';
import { quantity, skinReading } from '../../../domain/growth/skins.ts';

const PHOTO: LivePhoto = {
  photo: { id: 'photo-1', subject: { kind: 'animal', specimenId: 'specimen-1' }, takenOn: '2025-04-10' },
  readings: [skinReading('photo-1', [quantity('carapace-length', 14.2, 0.1)])],
};

function shown(photos: readonly LivePhoto[]): string {
  const markup = renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <Router ssrPath="/ladder/specimen-1">
        <NoRung specimenId="specimen-1" live={placeLiveSizes(photos, [])} />
      </Router>
    </QueryClientProvider>,
  );
  return markup.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
}

describe('an animal without a molt on record', () => {
  it('still shows what was measured on the living animal', () => {
    const words = shown([PHOTO]);
    expect(words).toContain('No rung yet');
    expect(words).toContain('Measured alive');
    expect(words).toContain('photo of 10 Apr 2025');
    expect(words).toContain('14.20 ± 0.20 mm');
    expect(words).toContain('no molt on record before it');
    expect(words).not.toContain('NaN');
  });

  it('has no empty table where nothing was measured', () => {
    expect(shown([])).not.toContain('Measured alive');
  });
});
