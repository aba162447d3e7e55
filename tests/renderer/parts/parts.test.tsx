import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { Button } from '../../../src/renderer/parts/Button.tsx';
import { DayText } from '../../../src/renderer/parts/DayText.tsx';
import { EstimateText } from '../../../src/renderer/parts/EstimateText.tsx';
import { Field } from '../../../src/renderer/parts/Field.tsx';
import { SexMark } from '../../../src/renderer/parts/SexMark.tsx';
import { Taxon } from '../../../src/renderer/parts/Taxon.tsx';
import { Thumb } from '../../../src/renderer/parts/Thumb.tsx';

/** Markup as it stands with the given preferences already known. */
function markup(element: ReactElement, inches = false): string {
  const client = new QueryClient();
  client.setQueryData(['GET /api/preferences', null, null], { theme: 'system', inches, observer: '' });
  return renderToStaticMarkup(<QueryClientProvider client={client}>{element}</QueryClientProvider>);
}

function textOf(html: string): string {
  return html.replace(/<[^>]+>/g, '');
}

describe('parts', () => {
  test('a scientific name is set in italics, an unknown one is said to be unknown', () => {
    expect(markup(<Taxon name="Grammostola pulchra" />)).toMatch(/^<i[^>]*>Grammostola pulchra<\/i>$/);
    expect(textOf(markup(<Taxon name=" " />))).toBe('species unknown');
  });

  test('a length stands with its uncertainty and unit, with inches beside it only on demand', () => {
    const estimate = { value: 25.4, standardUncertainty: 0.127, expandedUncertainty: 0.254 };
    expect(textOf(markup(<EstimateText estimate={estimate} />))).toBe('25.40 ± 0.25 mm');
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    expect(textOf(markup(<EstimateText estimate={estimate} />, true))).toBe('25.40 ± 0.25 mm 1.000 ± 0.010 in');
    expect(textOf(markup(<EstimateText estimate={estimate} unit="1" />, true))).toBe('25.40 ± 0.25');
  });

  test('a day carries its machine-readable form, a span is said in words', () => {
    expect(markup(<DayText day="2026-03-05" />)).toBe('<time dateTime="2026-03-05">5 Mar 2026</time>');
    expect(textOf(markup(<DayText day="2026-03-05" to="2026-03-07" />))).toBe('5 to 7 Mar 2026');
  });

  test('the ring of the sex mark closes with certainty and is open without any', () => {
    const arc = (html: string) => Number(/stroke-dasharray="([\d.]+) /i.exec(html)?.[1] ?? 0);
    const levels = (['leaning', 'probable', 'strong', 'established'] as const).map((level) =>
      arc(markup(<SexMark sign={{ sex: 'female', level, conflict: false }} />)),
    );
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    expect(levels[3]).toBeCloseTo(2 * Math.PI * 11, 6);
    expect(arc(markup(<SexMark sign={{ sex: 'unsexed', level: null, conflict: false }} />))).toBe(0);
  });

  test('a compact sex mark keeps its words for those who listen', () => {
    const html = markup(<SexMark compact sign={{ sex: 'male', level: 'strong', conflict: true }} />);
    expect(html).toContain('<span class="spoken-only">male, strong (contradicted)</span>');
    expect(html).toContain('title="male, strong (contradicted)"');
  });

  test('label, hint and error of a field belong to its control', () => {
    const html = markup(
      <Field label="Code" hint="Short" error="Taken">
        {(control) => <input {...control} />}
      </Field>,
    );
    const id = /<input id="([^"]+)"/.exec(html)?.[1];
    expect(id).toBeTruthy();
    expect(html).toContain(`for="${id}"`);
    expect(html).toContain(`aria-describedby="${id}-hint ${id}-error"`);
    expect(html).toContain('aria-invalid="true"');
    expect(markup(<Field label="Code">{(control) => <input {...control} />}</Field>)).not.toMatch(/aria-(describedby|invalid)/);
  });

  test('a busy button says so and stays where the focus is', () => {
    const html = markup(<Button busy>Save</Button>);
    expect(html).toContain('aria-busy="true"');
    expect(html).toContain('aria-disabled="true"');
    expect(html).not.toMatch(/ disabled/);
  });

  test('a photo is shown by its rendition with what it shows as its text', () => {
    expect(markup(<Thumb photoId="p/1" alt="Skin" kind="screen" />)).toMatch(
      /<img src="\/api\/photos\/p%2F1\/renditions\/screen" alt="Skin"/,
    );
    expect(markup(<Thumb photoId={null} alt="" />)).not.toContain('<img');
  });
});
