import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import type { StatementFacts } from '../../../src/domain/sexing/statement/statement.ts';
import { sexStatementPdf } from '../../../src/exchange/sexStatement/sexStatementPdf.ts';
import { sexStatement, statementAsText } from '../../../src/words/sexStatement.ts';
import { CLEAR_FEMALE, determination } from '../../domain/sexing/readings.ts';
import { smallPicture } from '../../support/smallPictures.ts';

const FACTS: StatementFacts = {
  today: '2026-11-25',
  code: 'K-7',
  taxon: 'Lasiodora parahybana',
  name: null,
  sign: { sex: 'female', level: 'strong', conflict: false },
  leading: determination({ evidencePhotoIds: ['p1'] }),
  skin: { shedFrom: '2026-04-28', shedTo: '2026-05-01', carapaceMm: 14.62, legSpanMm: 92 },
  otherReadings: 1,
  liveSigns: [],
  photos: [{ photoId: 'p1', originalName: 'strip.jpg' }],
  promise: { ifWrong: 'exchange', until: '2027-05-01', sizeNow: 'leg span 105 mm, laid out' },
};
const said = (changes: Partial<StatementFacts> = {}): string => statementAsText(sexStatement({ ...FACTS, ...changes }));

describe('a statement of sex', () => {
  it('names method, reader, day and size of the skin, photos, promise', () => {
    const text = said();
    for (const part of [
      'Sex: strong female.',
      'stereomicroscope',
      'Ilse Brandmeier, 2 May 2026; no second reader',
      '28 Apr to 1 May 2026',
    ]) {
      expect(text).toContain(part);
    }
    for (const part of ['carapace 14.6 mm', 'grade A', 'strip.jpg', 'Exchange, until 1 May 2027', 'leg span 105 mm'])
      expect(text).toContain(part);
  });

  it('says what was not checked', () => {
    expect(said()).toContain('Not checked: comparison with a skin of known sex and a second reader');
    const halfRead = determination({
      checklist: { ...CLEAR_FEMALE, uterusExternusSeen: 'cannot-tell', fusillaeOutsideSeen: 'not-looked' },
    });
    expect(said({ leading: halfRead })).toMatch(/Not checked: uterus externus, fusillae on the outer side, comparison/);
  });

  it('says "unsexed" below probable, of a contradiction, and of an animal nobody has read', () => {
    expect(said({ sign: { sex: 'female', level: 'leaning', conflict: false } })).toContain('Sex: unsexed.');
    expect(said({ sign: { sex: 'unsexed', level: null, conflict: true } })).toContain('contradict each other');
    const nothing = said({
      sign: { sex: 'unsexed', level: null, conflict: false },
      leading: null,
      skin: null,
      photos: [],
      otherReadings: 0,
    });
    expect(nothing).toContain('Read from: nothing yet');
    expect(nothing).toContain('Not checked: any skin');
  });

  it('calls a male mature only with bulbs on record', () => {
    const male = { sex: 'male', level: 'probable', conflict: false } as const;
    expect(said({ sign: male })).toContain('Sex: probable male.');
    const finding = { kind: 'palpal-bulbs', seen: true, ultimateMoltId: null } as const;
    const signed = { id: 'l', specimenId: 's', seenOn: '2026-08-01', observer: 'K', photoIds: ['p'], notes: '' };
    const bulbs = { ...signed, finding, signedAt: '2026-08-01T12:00:00.000Z', withdrawn: null };
    expect(said({ sign: { ...male, level: 'established' }, liveSigns: [bulbs] })).toContain('Sex: established mature male.');
  });

  it('promises no certainty, whatever is on record', () => {
    for (const level of ['leaning', 'probable', 'strong', 'established'] as const) {
      for (const sex of ['female', 'male'] as const) {
        expect(said({ sign: { sex, level, conflict: false } })).not.toMatch(/100|confirmed|certain\b|guaranteed/i);
      }
    }
  });
});

describe('its page', () => {
  const imagesOf = (document: PDFDocument): number =>
    document.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFRawStream && object.dict.get(PDFName.of('Subtype')) === PDFName.of('Image')).length;

  it.each(['a4', 'letter'] as const)('is one page of %s with its photos, the same bytes each time', async (paper) => {
    const pictures = [{ caption: 'strip.jpg', jpeg: await smallPicture(1, 'jpeg') }];
    const bytes = await sexStatementPdf(sexStatement(FACTS), pictures, paper);
    const document = await PDFDocument.load(bytes);
    expect([document.getPageCount(), imagesOf(document)]).toEqual([1, 1]);
    expect(document.getPage(0).getWidth()).toBeCloseTo(paper === 'a4' ? 595.28 : 612, 1);
    expect(await sexStatementPdf(sexStatement(FACTS), pictures, paper)).toEqual(bytes);
  });

  it('stays one page with everything at its longest, in letters that its fonts lack', async () => {
    const long = {
      ...FACTS,
      code: 'Ж'.repeat(60),
      photos: Array.from({ length: 50 }, (_, at) => ({ photoId: `${at}`, originalName: `${'鳥'.repeat(200)}.jpg` })),
    };
    const document = await PDFDocument.load(await sexStatementPdf(sexStatement(long), [], 'letter'));
    expect([document.getPageCount(), imagesOf(document)]).toEqual([1, 0]);
  });
});
