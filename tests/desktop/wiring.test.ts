import { describe, expect, test } from 'vitest';
import { filesUnder, textOf } from '../architecture/sources.ts';

/**
 * Electron itself cannot run in these tests, so what the wiring says is held by its text; each pattern names the item of
 * the security checklist in Electron's documentation (docs/tutorial/security.md) that hangs on it.
 */

const wiring = filesUnder('src/desktop', ['.ts'])
  .map(({ text }) => text)
  .join('\n');

describe('the wiring of the desktop shell', () => {
  test.each([
    ['sandboxes every renderer (4)', /if \(!app\.commandLine\.hasSwitch\('no-sandbox'\)\) app\.enableSandbox\(\);/],
    [
      'asks before granting a permission (5)',
      /setPermissionRequestHandler\(\(_, permission, answer, \{ requestingUrl \}\) => answer\(mayEnter\(/,
    ],
    ['answers checks of permissions (5)', /setPermissionCheckHandler\(\(_, permission, requestingOrigin\) => mayEnter\(/],
    ['refuses webviews (12)', /'will-attach-webview', \(event\) => event\.preventDefault\(\)/],
    ['holds navigation (13)', /'will-navigate', hold[\s\S]*'will-redirect', hold[\s\S]*'will-frame-navigate', hold/],
    ['opens no windows (14)', /setWindowOpenHandler[\s\S]*action: 'deny'/],
    ['checks who sends a message (17)', /if \(!isFromOurPage\(event\)\) return/],
    ['loads the page from the scheme (18)', /loadURL\(START_PAGE\)/],
    ['guards requests by frame', /onBeforeRequest\([\s\S]*mayAsk\(/],
    ['starts once', /requestSingleInstanceLock\(\)/],
  ])('%s', (_name, pattern) => {
    expect(wiring).toMatch(pattern);
  });

  test.each([
    ['loads a file (18)', /\bloadFile\(|file:\/\//],
    ['switches web security off (6)', /webSecurity: false|disable-web-security/],
    ['lets the scheme around the content security policy (7, 18)', /bypassCSP: true|corsEnabled|allowServiceWorkers/],
    ['hands Electron to the page (20)', /exposeInMainWorld\([^)]*(ipcRenderer|electron)/],
    ['uses the remote module or synchronous messages', /sendSync|@electron\/remote/],
  ])('never %s', (_name, pattern) => {
    expect(wiring).not.toMatch(pattern);
  });

  test('declares the scheme before anything that waits', () => {
    const main = textOf('src/desktop/main.ts');
    expect(main.indexOf('declareScheme();')).toBeGreaterThan(-1);
    expect(main.indexOf('declareScheme();')).toBeLessThan(main.indexOf('whenReady'));
    expect(main).not.toMatch(/^await /m);
  });
});
