import { describe, expect, test } from 'vitest';
import { nextStep, type Situation } from '../../src/launch/choose.ts';

const ELECTRON = { state: 'present', executable: '/app/electron' } as const;
const NO_ELECTRON = { state: 'unavailable', reason: 'Electron is not installed and could not be fetched' } as const;
const BROWSER = { state: 'present', executable: '/usr/bin/chromium' } as const;
const NO_BROWSER = { state: 'unavailable', reason: 'no Chromium-family browser was found' } as const;

const desk: Situation = { wanted: null, hasDisplay: true, asRoot: false, electron: ELECTRON, browser: BROWSER };

const cases: readonly [name: string, situation: Partial<Situation>, step: object][] = [
  [
    'takes Electron where it is',
    {},
    { kind: 'open', shell: 'electron', executable: '/app/electron', line: 'Opening Exuviary in Electron: it is installed.' },
  ],
  ['fetches an absent Electron first', { electron: { state: 'absent' } }, { kind: 'fetch-electron' }],
  [
    'takes a browser where Electron is not to be had, and says why',
    { electron: NO_ELECTRON },
    {
      kind: 'open',
      shell: 'browser',
      executable: '/usr/bin/chromium',
      line: 'Opening Exuviary in an app window of /usr/bin/chromium: Electron is not installed and could not be fetched.',
    },
  ],
  [
    'says that a browser runs without its sandbox as root',
    { electron: NO_ELECTRON, asRoot: true },
    {
      kind: 'open',
      shell: 'browser',
      executable: '/usr/bin/chromium',
      line: 'Opening Exuviary in an app window of /usr/bin/chromium, without its own sandbox because you are root: Electron is not installed and could not be fetched.',
    },
  ],
  [
    'says that Electron runs without its sandbox as root',
    { asRoot: true },
    {
      kind: 'open',
      shell: 'electron',
      executable: '/app/electron',
      line: 'Opening Exuviary in Electron, without its own sandbox because you are root: it is installed.',
    },
  ],
  [
    'gives the address where neither is to be had',
    { electron: NO_ELECTRON, browser: NO_BROWSER },
    {
      kind: 'open',
      shell: 'link',
      line: 'Open this address once, within a minute, in a browser on this machine (Electron is not installed and could not be fetched, and no Chromium-family browser was found):',
    },
  ],
  [
    'gives the address without a display, and fetches nothing',
    { hasDisplay: false, electron: { state: 'absent' } },
    {
      kind: 'open',
      shell: 'link',
      line: 'Open this address once, within a minute, in a browser on this machine (there is no display here):',
    },
  ],
  [
    'gives the address to whoever asks for it',
    { wanted: 'link' },
    {
      kind: 'open',
      shell: 'link',
      line: 'Open this address once, within a minute, in a browser on this machine (you asked for the address alone):',
    },
  ],
  [
    'takes a browser for whoever asks for one, and fetches nothing',
    { wanted: 'browser', electron: { state: 'absent' } },
    {
      kind: 'open',
      shell: 'browser',
      executable: '/usr/bin/chromium',
      line: 'Opening Exuviary in an app window of /usr/bin/chromium: you asked for a browser.',
    },
  ],
  [
    'takes nothing else for whoever asks for Electron',
    { wanted: 'electron', electron: NO_ELECTRON },
    { kind: 'give-up', line: 'Exuviary cannot open with --shell electron: Electron is not installed and could not be fetched.' },
  ],
  [
    'takes nothing else for whoever asks for a browser',
    { wanted: 'browser', browser: NO_BROWSER },
    { kind: 'give-up', line: 'Exuviary cannot open with --shell browser: no Chromium-family browser was found.' },
  ],
  [
    'cannot open a window without a display',
    { wanted: 'browser', hasDisplay: false },
    { kind: 'give-up', line: 'Exuviary cannot open with --shell browser: there is no display here.' },
  ],
];

describe('the choice of a shell', () => {
  test.each(cases)('%s', (_name, situation, step) => {
    expect(nextStep({ ...desk, ...situation })).toEqual(step);
  });
});
