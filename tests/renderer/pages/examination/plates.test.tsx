import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import { PlatesPage } from '../../../../src/renderer/pages/examination/plates/PlatesPage.tsx';

const markup = renderToStaticMarkup(
  <Router ssrPath="/examination/plates">
    <PlatesPage />
  </Router>,
);
const described = [...markup.matchAll(/<svg[^>]*role="img"[^>]*aria-label="([^"]+)"/g)].map(([, label]) => label ?? '');

describe('the guide plates', () => {
  it('describe every drawing in words', () => {
    expect(described).toHaveLength(markup.split('<svg').length - 1);
    for (const label of described) expect(label.length).toBeGreaterThan(15);
  });

  it('draw and name every structure that the reading asks about (sexing.md 2.1 and 2.4: uterus externus, lower lip, fusillae)', () => {
    for (const structure of [/upper lip/, /lower lip/i, /crescent of small spigots, its arc forward/, /accessory organs/i, /book lungs/])
      expect(described.some((label) => structure.test(label))).toBe(true);
    expect(markup).toContain('Lower lip, the rear margin of the opening');
  });

  it('end the wait after a molt by its date and black fangs together, never by one of them (common practice, no source)', () => {
    expect(markup).toContain('its date is reached, and the fangs are black');
    expect(markup).not.toMatch(/worth more than the calendar/);
  });
});
