import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contentSecurityPolicy } from '../../src/core/policy.ts';
import { listStaticFiles, type StaticFiles } from '../../src/core/staticFiles.ts';

describe('the files of the page', () => {
  let folder: string;
  let serve: StaticFiles;
  const get = (path: string, method = 'GET') => serve(new Request(`http://127.0.0.1${path}`, { method }));

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'exuviary-pages-'));
    await mkdir(join(folder, 'pages', 'assets'), { recursive: true });
    await writeFile(join(folder, 'secret.txt'), 'not for the page');
    await writeFile(join(folder, 'pages', 'index.html'), '<!doctype html><title>x</title>');
    await writeFile(join(folder, 'pages', 'assets', 'index-3f2a.js'), 'export {};');
    await writeFile(join(folder, 'pages', 'assets', 'font-9c.woff2'), new Uint8Array([1, 2, 3]));
    serve = await listStaticFiles(join(folder, 'pages'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('start with index.html under the policy, asked for again each time', async () => {
    for (const path of ['/', '/index.html']) {
      const response = await get(path);
      expect(response?.status).toBe(200);
      expect(response?.headers.get('content-type')).toBe('text/html; charset=utf-8');
      expect(response?.headers.get('content-security-policy')).toBe(contentSecurityPolicy());
      expect(response?.headers.get('cache-control')).toBe('no-cache');
      expect(await response?.text()).toContain('<!doctype html>');
    }
  });
  it('are kept for ever where the name carries a hash', async () => {
    const response = await get('/assets/index-3f2a.js');
    expect(response?.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(response?.headers.get('cache-control')).toContain('immutable');
    expect((await get('/assets/font-9c.woff2'))?.headers.get('content-type')).toBe('font/woff2');
  });
  it('answer HEAD without the bytes', async () => {
    const response = await get('/assets/font-9c.woff2', 'HEAD');
    expect(response?.headers.get('content-length')).toBe('3');
    expect(response?.body).toBeNull();
  });
  it.each([
    '/nothing',
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/assets/../../secret.txt',
    '/assets',
    '//secret.txt',
    '/assets/index-3f2a.js/',
  ])('are only those on the list: %s', async (path) => expect(await get(path)).toBeNull());
  it('that came later are not on the list', async () => {
    await writeFile(join(folder, 'pages', 'later.html'), 'x');
    expect(await get('/later.html')).toBeNull();
  });
  it('take no changes', async () => expect(await get('/', 'POST')).toBeNull());
  it('must be there', async () => {
    await expect(listStaticFiles(join(folder, 'pages', 'assets'))).rejects.toThrow('index.html');
  });
});
