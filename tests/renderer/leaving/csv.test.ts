import { describe, expect, it } from 'vitest';
import { csvBlob, csvText } from '../../../src/renderer/leaving/csv.ts';
import { fileName } from '../../../src/renderer/leaving/save.ts';

describe('csvText', () => {
  it('follows RFC 4180, section 2: quotes doubled, lines ended by CRLF', () => {
    expect(
      csvText([
        ['aaa', 'b "bb', 'c,cc'],
        ['z\ny', 1.5, null],
      ]),
    ).toBe('aaa,"b ""bb","c,cc"\r\n"z\ny",1.5,\r\n');
  });

  it('leaves a number empty that is none', () => {
    expect(csvText([[Number.NaN, Number.POSITIVE_INFINITY]])).toBe(',\r\n');
  });

  it('begins with the mark that says UTF-8', async () => {
    expect([...new Uint8Array(await csvBlob([['x']]).arrayBuffer())].slice(0, 3)).toEqual([0xef, 0xbb, 0xbf]);
  });
});

describe('fileName', () => {
  it('keeps a name and drops what file systems refuse', () => {
    expect(fileName('FH/03: "Juniper"  ratio.svg')).toBe('FH-03- -Juniper- ratio.svg');
  });
});
