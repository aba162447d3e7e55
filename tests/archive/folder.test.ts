import { expect, test } from 'vitest';
import { defaultArchiveFolder } from '../../src/archive/folder.ts';

// Sources: XDG Base Directory Specification 0.8 (a relative $XDG_DATA_HOME is invalid and ignored); Apple, File System
// Programming Guide (Application Support); Microsoft, KNOWNFOLDERID (LocalAppData).
test.each([
  ['linux', '/home/k', {}, '/home/k/.local/share/exuviary'],
  ['linux', '/home/k', { XDG_DATA_HOME: '/data' }, '/data/exuviary'],
  ['linux', '/home/k', { XDG_DATA_HOME: 'data' }, '/home/k/.local/share/exuviary'],
  ['linux', '/home/k', { XDG_DATA_HOME: '' }, '/home/k/.local/share/exuviary'],
  ['freebsd', '/home/k', {}, '/home/k/.local/share/exuviary'],
  ['darwin', '/Users/k', { XDG_DATA_HOME: '/data' }, '/Users/k/Library/Application Support/Exuviary'],
  ['win32', 'C:\\Users\\k', { LOCALAPPDATA: 'D:\\Local' }, 'D:\\Local\\Exuviary'],
  ['win32', 'C:\\Users\\k', {}, 'C:\\Users\\k\\AppData\\Local\\Exuviary'],
] as const)('on %s with home %s and %o the archive lies in %s', (platform, home, environment, folder) => {
  expect(defaultArchiveFolder({ platform, home, environment })).toBe(folder);
});
