import { describe, expect, it } from 'vitest';
import { parseArguments } from '../../src/loopback/arguments.ts';

describe('the arguments of the loopback shell', () => {
  it('may all be left out', () => {
    expect(parseArguments([])).toEqual({
      archive: null,
      port: 0,
      tokenFile: null,
      now: null,
      seed: null,
      renderer: null,
      keep: false,
      help: false,
    });
  });
  it('are taken as given', () => {
    const words = '--archive a --port 4711 --token-file t --now 2026-01-01T12:00Z --seed s --renderer r --keep'.split(' ');
    expect(parseArguments(words)).toEqual({
      archive: 'a',
      port: 4711,
      tokenFile: 't',
      now: '2026-01-01T12:00Z',
      seed: 's',
      renderer: 'r',
      keep: true,
      help: false,
    });
  });
  it('are no empty words: an archive without a name would be opened wherever somebody stands', () => {
    expect(() => parseArguments(['--archive', ''])).toThrow('Expected a value after --archive but received none');
  });

  it('may ask for the usage', () => {
    expect(parseArguments(['--help']).help).toBe(true);
  });
  it.each([
    [['--port', '70000'], /--port to be a number from 0 to 65535 but received 70000/],
    [['--port', '1e3'], /--port/],
    [['--now', 'yesterday'], /--now to be a moment .* but received yesterday/],
    [['--archiv', 'x'], /--archiv/],
    [['folder'], /folder/],
  ])('are refused with a sentence: %j', (words, sentence) => {
    expect(() => parseArguments(words)).toThrow(TypeError);
    expect(() => parseArguments(words)).toThrow(sentence);
  });
});
