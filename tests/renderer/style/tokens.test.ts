import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const TOKENS = readFileSync(new URL('../../../src/renderer/style/tokens.css', import.meta.url), 'utf8');
const COLORS = new Map(
  [...TOKENS.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(([, name, light, dark]) => [name, { light, dark }]),
);

/** Relative luminance of sRGB (WCAG 2.2, definition "relative luminance"). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((start) => {
    const channel = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, definition "contrast ratio". */
function contrast(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

function color(name: string, theme: 'light' | 'dark'): string {
  const value = COLORS.get(name)?.[theme] ?? (name === 'bench-ground' ? /--bench-ground: (#[0-9a-f]{6})/.exec(TOKENS)?.[1] : undefined);
  if (!value) throw new Error(`Expected a token --${name} but found none.`);
  return value;
}

const GROUNDS = ['paper', 'paper-raised', 'paper-sunken', 'accent-wash', 'warning-wash'];
const TEXTS = ['ink', 'ink-soft', 'accent', 'accent-strong', 'moss', 'slate', 'warning'];

describe('contrast of the tokens', () => {
  test('white on black is 21 to 1, so the formula is the right one (WCAG 2.2)', () => {
    expect(contrast('#ffffff', '#000000')).toBeCloseTo(21, 10);
  });

  for (const theme of ['light', 'dark'] as const) {
    for (const ground of GROUNDS) {
      test.each(TEXTS)(`%s on ${ground}, ${theme}, reaches 4.5 to 1 (WCAG 2.2, 1.4.3 AA)`, (text) => {
        expect(contrast(color(text, theme), color(ground, theme))).toBeGreaterThanOrEqual(4.5);
      });
    }

    test(`text on the accent, ${theme}, reaches 4.5 to 1`, () => {
      expect(contrast(color('on-accent', theme), color('accent', theme))).toBeGreaterThanOrEqual(4.5);
      expect(contrast(color('on-accent', theme), color('accent-strong', theme))).toBeGreaterThanOrEqual(4.5);
    });

    test.each(['paper', 'paper-raised', 'accent-wash'])(
      `lines of controls and the focus ring on %s, ${theme}, reach 3 to 1 (WCAG 2.2, 1.4.11 AA)`,
      (ground) => {
        expect(contrast(color('control-line', theme), color(ground, theme))).toBeGreaterThanOrEqual(3);
        expect(contrast(color('accent', theme), color(ground, theme))).toBeGreaterThanOrEqual(3);
      },
    );
  }

  test.each(TEXTS)('%s of the dark set on the ground of the Bench reaches 4.5 to 1', (text) => {
    expect(contrast(color(text, 'dark'), color('bench-ground', 'dark'))).toBeGreaterThanOrEqual(4.5);
  });
});
