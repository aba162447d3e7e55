import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import { buildLadder, type MoltOnRecord } from '../../../../src/domain/growth/ladder.ts';
import type { LiveSize } from '../../../../src/domain/growth/liveSizes.ts';
import { placeLiveSizes } from '../../../../src/domain/growth/liveSizes.ts';
import { RungTable } from '../../../../src/renderer/pages/ladder/RungTable.tsx';
import { ODD_IN_ROW } from '../../../../src/words/growth.ts';
import { moltOn, quantity, skinReading } from '../../../domain/growth/skins.ts';

function tableOf(molts: MoltOnRecord[], live: readonly LiveSize[] = [], inDoubt: readonly string[] = []): string {
  return renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <Router ssrPath="/ladder/specimen-1">
        <RungTable rungs={buildLadder(molts).rungs} live={live} inDoubt={inDoubt} specimenId="specimen-1" />
      </Router>
    </QueryClientProvider>,
  );
}

/** The table's rows as a reader meets them: words only. */
function rowsOf(...molts: MoltOnRecord[]): string[] {
  return wordsIn(tableOf(molts));
}

function wordsIn(markup: string): string[] {
  return [...markup.matchAll(/<tr[^>]*>(.*?)<\/tr>/g)].slice(1).map(([, row = '']) =>
    row
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );
}

describe('RungTable', () => {
  it('gives each instar its molt, size, ratio and days', () => {
    const [first, second] = rowsOf(moltOn('2024-01-01', 5, 10, 0.1), moltOn('2024-04-10', 6, 13, 0.13));
    expect(first).toContain('Instar 5 shed 1 Jan 2024 10.00 ± 0.20 mm');
    expect(first).toContain('first on record');
    expect(second).toContain('Instar 6 shed 10 Apr 2024 13.00 ± 0.26 mm');
    // 1.3 with 1 % from each size in quadrature, k = 2.
    expect(second).toContain('1.300 ± 0.037');
    expect(second).toContain('100 days');
  });

  it('marks a skin that does not fit those beside it', () => {
    const molts = [moltOn('2024-01-01', 5, 10), moltOn('2024-04-10', 6, 6)];
    const [first, second] = wordsIn(tableOf(molts, [], [molts[1]?.molt.id ?? '']));
    expect(first).not.toContain(ODD_IN_ROW);
    expect(second).toContain(`Instar 6 shed 10 Apr 2024 ${ODD_IN_ROW}`);
  });

  it('says a gap in words between the rows it lies between, and gives no ratio across it', () => {
    const rows = rowsOf(moltOn('2024-01-01', 5, 10), moltOn('2024-09-01', 7, 16));
    expect(rows).toHaveLength(3);
    expect(rows[1]).toBe('Instar 6 has no molt on record. Take this gap out');
    expect(rows[2]).toContain('gap before it');
  });

  it('keeps a molt without a measured skin, with the reason', () => {
    const rows = rowsOf(moltOn('2024-01-01', 5, 10), { ...moltOn('2024-04-01', 6, null), photos: [] }, moltOn('2024-09-01', 7, 16));
    expect(rows).toHaveLength(3);
    expect(rows[1]).toContain('skin not photographed yet');
    expect(rows[1]).toContain('not measured');
    expect(rows[2]).toContain('not both measured');
  });

  it('leads to the Bench and the Examination of each skin', () => {
    const markup = tableOf([moltOn('2024-01-01', 5, 10)]);
    expect(markup).toContain('/bench/photo-2024-01-01');
    expect(markup).toContain('/examination/skin-2024-01-01');
  });

  it('keeps the living animal apart from the skins, below the molt that it followed', () => {
    const molts = [moltOn('2024-01-01', 5, 10), moltOn('2024-09-01', 6, 13)];
    const photos = [
      { id: 'alive', takenOn: '2024-03-03' },
      { id: 'undated', takenOn: null },
    ].map(({ id, takenOn }) => ({
      photo: { id, takenOn, subject: { kind: 'animal' as const, specimenId: 'specimen-1' } },
      readings: [skinReading(id, [quantity('carapace-length', 12.4, 0.1)])],
    }));
    const live = placeLiveSizes(
      photos,
      molts.map(({ molt }) => molt),
    );
    const rows = wordsIn(tableOf(molts, live));
    expect(rows).toHaveLength(4);
    expect(rows[1]).toContain('Instar 6, alive photo of 3 Mar 2024 12.40 ± 0.20 mm');
    expect(rows[1]).toContain('measured on the living animal, in no ratio');
    expect(rows[2]).toContain('Instar 6 shed 1 Sep 2024');
    expect(rows[2]).toContain('1.300');
    expect(rows[3]).toContain('photo without a date between which molts is not known');
  });
});
