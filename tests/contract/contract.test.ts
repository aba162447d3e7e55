import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contract } from '../../src/api/contract/contract.ts';
import { openTestCore, type TestCore } from '../support/testCore.ts';
import type { Exchange, Memory } from './exchange.ts';
import { ROADS, type Road } from './roads.ts';
import { archiveStory } from './stories/archive.ts';
import { evidenceStory } from './stories/evidence.ts';
import { findingStory } from './stories/finding.ts';
import { forecastStory } from './stories/forecasts.ts';
import { galleryStory } from './stories/gallery.ts';
import { growthStory } from './stories/growth.ts';
import { intakeStory } from './stories/intake.ts';
import { measuringStory } from './stories/measuring.ts';
import { removalStory } from './stories/removals.ts';
import { sampleStory } from './stories/sampleCabinet.ts';
import { sexingStory } from './stories/sexing.ts';
import { specimenStory } from './stories/specimens.ts';
import { watchStory } from './stories/watch.ts';

/** In this order: each builds on what those before have learned. */
const exchanges: readonly Exchange[] = [
  ...archiveStory,
  ...specimenStory,
  ...intakeStory,
  ...measuringStory,
  ...galleryStory,
  ...sexingStory,
  ...watchStory,
  ...evidenceStory,
  ...removalStory,
  ...sampleStory,
  ...findingStory,
  ...growthStory,
  ...forecastStory,
];

describe('the table of exchanges', () => {
  it('has a success for every route of the contract', () => {
    const succeeding = new Set<string>(exchanges.filter(({ fails }) => fails === null).map(({ key }) => key));
    expect(Object.keys(contract).filter((key) => !succeeding.has(key))).toEqual([]);
  });
});

describe.each(Object.entries(ROADS))('over %s', (name, build) => {
  const memory: Memory = new Map();
  let opened: TestCore;
  let road: Road;

  beforeAll(async () => {
    opened = await openTestCore(name);
    road = await build(opened.core);
  });
  afterAll(async () => {
    await road.close();
    await opened.remove();
  });

  it.each(exchanges.map((exchange) => [`${exchange.key}: ${exchange.title}`, exchange] as const))('%s', (_, exchange) =>
    exchange.run(road, memory),
  );

  it('sends the page, under the policy', async () => {
    const response = await road.ask({ method: 'GET', path: '/', headers: {} });
    expect(response.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(await response.text()).toContain('<title>Exuviary</title>');
  });
  it('sends a photo that the page holds already only by its name', async () => {
    const photos = (await (await road.ask({ method: 'GET', path: '/api/photos', headers: {} })).json()) as { id: string }[];
    const path = `/api/photos/${photos[0]?.id}/original`;
    const etag = (await road.ask({ method: 'GET', path, headers: {} })).headers.get('etag');
    const again = await road.ask({ method: 'GET', path, headers: { 'if-none-match': etag ?? '' } });
    expect([again.status, await again.text()]).toEqual([304, '']);
  });
  it('tells a reader that has seen the end of a task not to come back', async () => {
    const path = `/api/tasks/${memory.get('task')}/events`;
    const response = await road.ask({ method: 'GET', path, headers: { 'last-event-id': memory.get('last event') ?? '' } });
    expect(response.status).toBe(204);
  });
  it.each(['/api/nothing', '/nothing', '/assets/nothing.js'])('says that there is no %s', async (path) => {
    const response = await road.ask({ method: 'GET', path, headers: {} });
    expect(response.status).toBe(404);
    expect(await response.json()).toEqual({ failure: { code: 'no-such-route', method: 'GET', path } });
  });
  it('met no mistake of ours', () => expect(opened.defects).toEqual([]));
});
