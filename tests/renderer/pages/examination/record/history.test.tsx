import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import type { Determination } from '../../../../../src/domain/sexing/determination.ts';
import { fatesOf } from '../../../../../src/domain/sexing/later.ts';
import { History } from '../../../../../src/renderer/pages/examination/record/History.tsx';
import { ToastProvider } from '../../../../../src/renderer/parts/Toast.tsx';
import { answersInWords } from '../../../../../src/words/checklist.ts';
import { CLEAR_FEMALE, determination } from '../../../../domain/sexing/readings.ts';

function wordsOf(determinations: readonly Determination[]): string {
  const markup = renderToStaticMarkup(
    <QueryClientProvider client={new QueryClient()}>
      <Router ssrPath="/examination/skin-1">
        <ToastProvider>
          <History
            determinations={determinations}
            liveSigns={[]}
            exuviaId="skin-1"
            specimenId="specimen-1"
            photos={[]}
            fates={fatesOf(determinations, [])}
            nameOfSkin={(exuviaId) => `the skin ${exuviaId}`}
            onCorrect={() => undefined}
          />
        </ToastProvider>
      </Router>
    </QueryClientProvider>,
  );
  return markup
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

const female = determination({ id: 'a', exuviaId: 'skin-1', sex: 'female', level: 'strong', reader: 'Ada Rill', checklist: CLEAR_FEMALE });

describe('the record of an animal', () => {
  it('opens every answer of a signed determination', () => {
    const words = wordsOf([female]);
    for (const { question, answer } of answersInWords(CLEAR_FEMALE)) expect(words).toContain(`${question} ${answer}`);
    expect(words).toContain('Leg span of this skin 92 mm');
    expect(words).toContain('Is there a uterus externus? Seen');
  });

  it('asks in the record for as much as the checklist holds', () => {
    expect(answersInWords(CLEAR_FEMALE)).toHaveLength(Object.keys(CLEAR_FEMALE).length);
  });

  it('names the reading that another one stands against', () => {
    const words = wordsOf([female, determination({ id: 'b', exuviaId: 'skin-2', sex: 'male', level: 'probable', reader: 'Bo Quint' })]);
    expect(words).toContain('Stands against another reading of this animal: male, probable, read by Bo Quint');
    expect(words).toContain('Stands against another reading of this animal: female, strong, read by Ada Rill');
  });

  it('says of a leaning the other way that it goes the other way, on both sides, and calls it no contradiction', () => {
    const words = wordsOf([female, determination({ id: 'b', exuviaId: 'skin-2', sex: 'male', level: 'leaning', reader: 'Bo Quint' })]);
    expect(words).toContain('A leaning goes the other way');
    expect(words).toContain('Leans the other way than a surer reading');
    expect(words).not.toContain('Stands against');
  });
});
