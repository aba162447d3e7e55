import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';
import type { AxeResults } from 'axe-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2 at levels A and AA, and what axe-core calls good practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Nothing that axe-core finds fault with, once the page has been drawn. Runs from outside the page's script policy, over the debugging protocol. */
export async function expectAccessible(page: Page, where: string): Promise<void> {
  await expect(page.getByRole('main')).toBeVisible();
  const protocol = await page.context().newCDPSession(page);
  await evaluate(protocol, axe);
  const found = (await evaluate(
    protocol,
    `axe.run(document, ${JSON.stringify({ runOnly: RULES, resultTypes: ['violations'] })})`,
  )) as AxeResults;
  await protocol.detach();
  expect(found.passes.length + found.violations.length, `rules that applied in ${where}`).toBeGreaterThan(10);
  const faults = found.violations.flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html}\n${failureSummary}`));
  expect(faults, where).toEqual([]);
}

interface Protocol {
  send(
    method: 'Runtime.evaluate',
    parameters: { expression: string; awaitPromise: boolean; returnByValue: boolean },
  ): Promise<{ result: { value?: unknown }; exceptionDetails?: { text: string } | undefined }>;
}

async function evaluate(protocol: Protocol, expression: string): Promise<unknown> {
  const { result, exceptionDetails } = await protocol.send('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true });
  if (exceptionDetails !== undefined) throw new Error(`Expected the page to evaluate axe-core but: ${exceptionDetails.text}`);
  return result.value;
}

/** The page scrolls only up and down. */
export async function expectNoSidewaysScroll(page: Page, where: string): Promise<void> {
  const { needed, there } = await page.evaluate(() => ({
    needed: document.documentElement.scrollWidth,
    there: document.documentElement.clientWidth,
  }));
  expect.soft(needed, `width of ${where}`).toBeLessThanOrEqual(there);
}

/** A wet thumb needs 40 pixels, and finds nothing that shows only under a pointer. */
export async function expectKeysForAThumb(page: Page, place: string): Promise<void> {
  await page.mouse.move(0, 0);
  const poor = await page
    .getByRole('main')
    .locator('button, summary, select, label:has(input[type="radio"], input[type="checkbox"])')
    .evaluateAll((keys) =>
      keys
        .filter((key) => {
          const { width, height } = key.getBoundingClientRect();
          return width > 0 && (height < 40 || !key.checkVisibility({ opacityProperty: true, visibilityProperty: true }));
        })
        .map((key) => key.textContent || key.getAttribute('aria-label')),
    );
  expect(poor, `keys of ${place} that are too small or hidden`).toEqual([]);
}
