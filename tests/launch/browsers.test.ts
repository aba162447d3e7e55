import { describe, expect, test } from 'vitest';
import { browserCandidates, findBrowser } from '../../src/launch/browsers.ts';

const linux = { platform: 'linux', home: '/home/k', environment: { PATH: '/usr/bin:relative:/snap/bin' } } as const;

describe('the search for a browser', () => {
  test('looks on Linux in the folders of PATH, by name before folder', () => {
    const candidates = browserCandidates(linux);
    expect(candidates.slice(0, 3)).toEqual(['/usr/bin/chromium', '/snap/bin/chromium', '/usr/bin/chromium-browser']);
    expect(candidates).toContain('/snap/bin/microsoft-edge');
  });

  test('never takes a program from a relative folder of PATH', () => {
    expect(browserCandidates(linux).every((path) => path.startsWith('/'))).toBe(true);
  });

  test("looks on macOS among everybody's and the keeper's own applications", () => {
    const candidates = browserCandidates({ platform: 'darwin', home: '/Users/k', environment: {} });
    expect(candidates).toContain('/Applications/Chromium.app/Contents/MacOS/Chromium');
    expect(candidates).toContain('/Users/k/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
  });

  test('looks on Windows in the folders that the system names', () => {
    const environment = { ProgramFiles: 'C:\\Program Files', LOCALAPPDATA: 'C:\\Users\\k\\AppData\\Local' };
    const candidates = browserCandidates({ platform: 'win32', home: 'C:\\Users\\k', environment });
    expect(candidates).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
    expect(candidates).toContain('C:\\Users\\k\\AppData\\Local\\Chromium\\Application\\chrome.exe');
    expect(candidates.some((path) => path.includes('undefined'))).toBe(false);
  });

  test('takes the first that exists', () => {
    expect(findBrowser(linux, (path) => path === '/snap/bin/chromium' || path === '/usr/bin/google-chrome')).toEqual({
      state: 'present',
      executable: '/snap/bin/chromium',
    });
  });

  test('says so when there is none', () => {
    expect(findBrowser(linux, () => false)).toEqual({ state: 'unavailable', reason: 'no Chromium-family browser was found' });
  });
});
