import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import { growthReportOf } from '../../../../src/domain/growth/growthReport.ts';
import { buildLadder, type MoltOnRecord } from '../../../../src/domain/growth/ladder.ts';
import { Questions } from '../../../../src/renderer/pages/ladder/questions/Questions.tsx';
import { RemovedProvider } from '../../../../src/renderer/removing/RemovedProvider.tsx';
import { moltOn } from '../../../domain/growth/skins.ts';
import { beliefOfLadder } from '../../../support/believedGrowth.ts';

function asked(molts: readonly MoltOnRecord[]): string {
  const ladder = buildLadder(molts);
  const context = {
    today: '2026-01-01',
    sex: 'unsexed',
    isKept: true,
    moltedSince: false,
    belief: beliefOfLadder(ladder),
    live: [],
  } as const;
  const growth = growthReportOf(ladder, molts, context);
  return renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <Router ssrPath="/ladder/specimen-1">
        <RemovedProvider>
          <Questions specimenId="specimen-1" rungs={ladder.rungs} molts={[]} growth={growth} />
        </RemovedProvider>
      </Router>
    </QueryClientProvider>,
  ).replace(/<[^>]+>/g, ' ');
}

/** A row that grows 1.25 times at each molt, but for what is said. Invented. */
function rowOf(...sizesMm: number[]): MoltOnRecord[] {
  return sizesMm.map((sizeMm, index) => moltOn(`202${index}-03-01`, 4 + index, sizeMm, sizeMm / 200));
}

describe('questions about a row', () => {
  it('suggest a molt that may be missing', () => {
    expect(asked(rowOf(4, 5, 6.25, 9.77, 12.2, 15.3))).toMatch(/missed molt between instar 6 and instar 7/);
  });

  it('suggest none where the keeper is sure that none was missed, and say whose word that is', () => {
    const [row, sure] = [rowOf(4, 5, 6.25, 9.77, 12.2, 15.3), 3];
    const words = asked(
      row.map((record, index) =>
        index === sure ? { ...record, molt: { ...record.molt, outcomes: [...record.molt.outcomes, 'none-missed-before'] } } : record,
      ),
    );
    expect(words).toContain('You said that no molt was missed between instar 6 and instar 7.');
    expect(words).not.toMatch(/missed molt between instar 6/);
  });

  it('suggest none where two molts more would not explain the growth either', () => {
    const words = asked(rowOf(5.2, 5.3, 44.9));
    expect(words).toContain('No reared');
    expect(words).not.toContain('Put the gap on record');
    // Three times as long is what three molts of 1.44 make: there a gap may be the explanation.
    expect(asked(rowOf(5.2, 6.5, 19.5))).toContain('Put the gap on record');
  });

  it('suggest none from a skin smaller than the one before, whose scale or owner is wrong', () => {
    const words = asked(rowOf(4, 5, 6.25, 7.8, 9.77, 4.9));
    expect(words).toMatch(/From instar 8 to instar 9 the carapace/);
    expect(words).not.toContain('missed molt');
    expect(words).not.toContain('Put the gap on record');
    expect(words).toMatch(/Instar 8 on the Bench.*Instar 9 on the Bench/s);
  });

  it('name the skin that a wrong scale made too large, and ask for no gap before it', () => {
    const words = asked(rowOf(4, 5, 6.25 * 1.6, 7.8, 9.77, 12.2));
    expect(words).toContain('The rest of the row fits together without instar 6: look at that skin first.');
    expect(words).not.toContain('Put the gap on record');
    expect(asked(rowOf(5, 2.5))).not.toContain('look at that skin first');
  });
});
