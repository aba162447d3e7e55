import { expect } from 'vitest';
import type { Preferences } from '../../../src/domain/preferences.ts';
import { type Exchange, fails, succeeds } from '../exchange.ts';

const dark: Preferences = { theme: 'dark', inches: true, begunEmpty: true, observer: 'R. Reader', moltNotices: false, feedingTable: null };

export const archiveStory: readonly Exchange[] = [
  succeeds(
    'GET /api/about',
    'an archive begins empty',
    () => ({}),
    (about) => {
      expect(about).toMatchObject({ specimens: 0, samples: 0, photos: 0, unfinishedFiles: 0, unreadableRecords: [] });
    },
  ),
  succeeds(
    'GET /api/openapi.json',
    'describes itself',
    () => ({}),
    async (_, response) => {
      const description = (await response.json()) as { openapi: string; paths: object };
      expect(description.openapi).toMatch(/^3\.1\./);
      expect(description.paths).toHaveProperty(['/api/about', 'get']);
    },
  ),
  succeeds(
    'GET /api/presence',
    'keeps a stream open',
    () => ({}),
    async (_, response) => {
      expect(response.headers.get('content-type')).toContain('text/event-stream');
      const stream = response.body?.getReader();
      const first = await stream?.read();
      expect(new TextDecoder().decode(first?.value)).toMatch(/^id: .*\ndata: .*\n\n$/);
      await stream?.cancel();
    },
  ),
  succeeds(
    'PUT /api/preferences',
    'takes preferences',
    () => ({ body: dark }),
    (kept) => expect(kept).toEqual(dark),
  ),
  succeeds(
    'GET /api/preferences',
    'keeps preferences',
    () => ({}),
    (kept) => expect(kept).toEqual(dark),
  ),
  fails('PUT /api/preferences', 'refuses what is no preference', 'input-invalid', 400, () => ({
    body: { ...dark, theme: 'pink' as 'dark' },
  })),
  fails('PUT /api/preferences', 'refuses a body without its type', 'input-invalid', 400, () => ({
    body: dark,
    headers: { 'content-type': 'text/plain' },
  })),
  fails('PUT /api/preferences', 'refuses a body beyond the limit', 'body-too-large', 413, () => ({
    body: { ...dark, observer: 'x'.repeat(1_100_000) },
  })),
];
