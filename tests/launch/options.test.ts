import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { appWindowArguments } from '../../src/launch/appWindow.ts';
import { parseLaunchOptions } from '../../src/launch/options.ts';
import { announcementIn } from '../../src/launch/program.ts';

const HERE = resolve('/somewhere');
const parse = (...words: string[]) => parseLaunchOptions(words, HERE);

describe('the options of npm start', () => {
  test('are all optional', () => {
    expect(parse()).toEqual({ help: false, shell: null, browser: null, passedOn: [] });
  });

  test('pass on what the shell reads, in its order', () => {
    expect(parse('--archive', 'my skins', '--shell', 'link', '--seed=7').passedOn).toEqual(['--archive', 'my skins', '--seed', '7']);
  });

  test.each([['--arcive', 'x'], ['my skins'], ['-h']])('refuse what they do not know: %s', (...words) => {
    expect(() => parse(...words)).toThrow(`Expected one of the options below but received ${words[0]}`);
  });

  test('take a value after a space or an equals sign', () => {
    expect(parse('--shell', 'browser').shell).toBe('browser');
    expect(parse('--shell=browser').shell).toBe('browser');
  });

  test('read the path of a browser from where the command was given, and leave a bare name to the system', () => {
    expect(parse('--browser', './tools/chromium').browser).toBe(resolve(HERE, 'tools/chromium'));
    expect(parse('--browser', 'chromium').browser).toBe('chromium');
  });

  test('refuse an unknown shell with the known ones', () => {
    expect(() => parse('--shell', 'window')).toThrow('Expected --shell to be one of electron, browser, link but received window');
  });

  test.each([['--shell'], ['--browser'], ['--archive'], ['--now'], ['--seed']])('refuse %s without a value', (name) => {
    expect(() => parse(name)).toThrow(`Expected a value after ${name} but received none`);
    expect(() => parse(`${name}=`)).toThrow(`Expected a value after ${name} but received none`);
    expect(() => parse(name, '--archive', 'x')).toThrow(`Expected a value after ${name} but received none`);
  });
});

describe("the browser's app window", () => {
  const window = { url: 'http://127.0.0.1:4000/?ticket=t', profile: '/tmp/profile', asRoot: false };

  test('opens the address as an app, with a profile of its own', () => {
    expect(appWindowArguments(window)).toEqual(
      expect.arrayContaining(['--app=http://127.0.0.1:4000/?ticket=t', '--user-data-dir=/tmp/profile', '--no-first-run']),
    );
  });

  test('gives up the sandbox for root alone', () => {
    expect(appWindowArguments(window)).not.toContain('--no-sandbox');
    expect(appWindowArguments({ ...window, asRoot: true })).toContain('--no-sandbox');
  });
});

describe('the announcement of a shell', () => {
  test.each([
    ['{"ready":"http://127.0.0.1:1/"}', 'http://127.0.0.1:1/'],
    ['{"ready":1}', null],
    ['{"other":"x"}', null],
    ['{ not JSON', null],
    ['null', null],
    ['ready', null],
  ])('in the line %s is %s', (line, announced) => {
    expect(announcementIn(line)).toBe(announced);
  });
});
