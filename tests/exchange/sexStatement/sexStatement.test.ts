import { PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import { extractText, getDocumentProxy } from 'unpdf';
import { describe, expect, it } from 'vitest';
import type { AbdomenDistance } from '../../../src/domain/sexing/abdomenDistances.ts';
import type { StatementFacts } from '../../../src/domain/sexing/statement/statement.ts';
import { closeUpOf, marksOn } from '../../../src/exchange/sexStatement/closeUp.ts';
import { sexStatementPdf } from '../../../src/exchange/sexStatement/sexStatementPdf.ts';
import { photoCaption, sexStatement, statementAsText } from '../../../src/words/sexStatement.ts';
import { CLEAR_FEMALE, determination } from '../../domain/sexing/readings.ts';
import { smallPicture } from '../../support/smallPictures.ts';

const FACTS: StatementFacts = {
  today: '2026-11-25',
  code: 'K-7',
  taxon: 'Lasiodora parahybana',
  name: null,
  sign: { sex: 'female', level: 'strong', conflict: false },
  leading: determination({ evidencePhotoIds: ['p1'] }),
  skin: { shedFrom: '2026-04-28', shedTo: '2026-05-01', carapaceMm: 14.62, legSpanMm: 92, distances: [] },
  otherReadings: 1,
  against: [],
  takenBack: [],
  carrying: [],
  shown: [],
  photos: [
    { photoId: 'p1', originalName: 'strip.jpg', view: 'abdomen-inside', filedElsewhere: false, widthPx: 400, heightPx: 300, pins: [] },
  ],
  photosGone: 0,
  promise: { ifWrong: 'exchange', until: '2027-05-01', sizeNow: 'leg span 105 mm, laid out' },
};
const SEEN = { on: '2026-05-30', by: 'Jo Quill', inReading: false } as const;
const said = (changes: Partial<StatementFacts> = {}): string => statementAsText(sexStatement({ ...FACTS, ...changes }));

describe('a statement of sex', () => {
  it('names method, reader, day and size of the skin, photos, promise', () => {
    const text = said();
    for (const part of [
      'Sex: female. How sure: strong, which is the middle one of three levels.',
      'stereomicroscope',
      'Ilse Brandmeier, 2 May 2026; no second reader',
      '28 Apr to 1 May 2026',
    ]) {
      expect(text).toContain(part);
    }
    for (const part of ['carapace 14.6 mm', 'grade A', 'strip.jpg', 'Exchange, until 1 May 2027', 'leg span 105 mm'])
      expect(text).toContain(part);
  });

  it('never hides a reading that says otherwise, whether it contradicts or only leans', () => {
    const male = determination({ id: 'd9', sex: 'male', level: 'probable', reader: 'Jo Quill', readOn: '2026-06-03' });
    const other = { determination: male, shedFrom: '2026-04-28', shedTo: '2026-05-01' };
    expect(said({ against: [other] })).toContain('Read otherwise: male, probable, read from the same skin by Jo Quill, 3 Jun 2026');
    const torn = said({
      sign: { sex: 'unsexed', level: null, conflict: true },
      ...{ leading: null, skin: null, photos: [], otherReadings: 0 },
      against: [other, { ...other, determination: determination({ sex: 'female', level: 'strong' }) }],
    });
    expect(torn).toContain('The readings on record contradict each other');
    expect(torn).toContain('female, strong, read from the skin shed 28 Apr to 1 May 2026');
    expect(torn).toContain('male, probable');
    expect(torn).toContain('Darwin Core term “sex”: indeterminate');
    expect(torn).not.toContain('nothing yet');
    const back = { ...other, determination: { ...male, withdrawn: { at: '2026-07-01T10:00:00.000Z', reason: 'The strip was folded.' } } };
    expect(said({ takenBack: [back] })).toContain('Taken back: male, probable');
    expect(said({ takenBack: [back] })).toContain('withdrawn: The strip was folded.');
  });

  it('names what the animal showed where that carries the sign, and no skin in its place', () => {
    const sac = { kind: 'egg-sac', fertile: 'no' } as const;
    const established = { sex: 'female', level: 'established', conflict: false } as const;
    const text = said({ sign: established, leading: null, skin: null, carrying: [sac], shown: [{ ...SEEN, finding: sac }], photos: [] });
    expect(text).toContain('Sex: female. How sure: established, which is the highest level.');
    expect(text).toContain('Read from: the animal itself, not from a skin: egg sac');
    expect(text).not.toContain('loupe');
    expect(text).toContain('Other readings: 1 more reading on record, none against it');
    expect(text).toContain('Not checked: the skins, which do not carry this claim');
  });

  it('says what its photos cannot show, and which are gone', () => {
    const above: StatementFacts['photos'][number] = {
      photoId: 'p2',
      originalName: 'above.jpg',
      view: 'dorsal',
      filedElsewhere: true,
      widthPx: 4,
      heightPx: 3,
      pins: [],
    };
    const text = said({ photos: [...FACTS.photos, above], photosGone: 1 });
    expect(text).toContain('above.jpg (seen from above, so the strip is not in it; no longer filed under this animal)');
    expect(text).toContain('1 photo no longer on record');
  });

  it('gives what was measured on the opened abdomen with its uncertainty, and the Darwin Core term (TDWG) for a catalogue', () => {
    const estimate = { value: 3.214, standardUncertainty: 0.11, expandedUncertainty: 0.22 };
    const width: AbdomenDistance = { distance: 'receptacle-width', called: null, photoIds: ['p1'], estimate };
    const own: AbdomenDistance = { ...width, distance: 'own', called: 'Left lobe' };
    const skin = FACTS.skin && { ...FACTS.skin, distances: [width, own] };
    expect(said({ skin })).toContain('width of the receptacles 3.21 mm ± 0.22 mm; left lobe 3.21 mm ± 0.22 mm');
    expect(said()).toContain('Darwin Core term “sex”: female');
  });

  it('says what was seen on the skin, what was read as absent, and what each mark on a photo shows', () => {
    expect(said()).toContain('Seen on the skin: receptacles and uterus externus; read as absent: accessory organs and fusillae');
    const mark = { kind: 'point' as const, at: { xPx: 1, yPx: 2 } };
    const pins = [{ question: 'receptaclesSeen' as const, photoId: 'p1', mark }];
    expect(photoCaption({ originalName: 'strip.jpg', pins })).toBe('strip.jpg; 1: receptacles');
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
    expect(said({ sign: male })).toContain('Sex: male. How sure: probable, which is the lowest of three levels.');
    const finding = { kind: 'palpal-bulbs', seen: true, ultimateMoltId: null } as const;
    const mature = said({ sign: { ...male, level: 'established' }, shown: [{ ...SEEN, finding }] });
    expect(mature).toContain('Sex: mature male. How sure: established, which is the highest level.');
    expect(mature).toContain('Seen on the animal: palpal bulbs, seen 30 May 2026 by Jo Quill');
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
    const pictures = [{ caption: 'strip.jpg', jpeg: await smallPicture(1, 'jpeg'), marks: [{ number: 1, points: [{ x: 0.5, y: 0.25 }] }] }];
    const bytes = await sexStatementPdf(sexStatement(FACTS), pictures, paper);
    const document = await PDFDocument.load(bytes);
    expect([document.getPageCount(), imagesOf(document)]).toEqual([1, 1]);
    expect(document.getPage(0).getWidth()).toBeCloseTo(paper === 'a4' ? 595.28 : 612, 1);
    expect(await sexStatementPdf(sexStatement(FACTS), pictures, paper)).toEqual(bytes);
  });

  it('enlarges what is marked on a photo, says so, and shows the whole of it too', async () => {
    const jpeg = await smallPicture(1, 'jpeg');
    const read = async (points: { x: number; y: number }[]) => {
      const pictures = [{ caption: 'strip.jpg', jpeg, marks: points.length === 0 ? [] : [{ number: 1, points }] }];
      const bytes = await sexStatementPdf(sexStatement(FACTS), pictures, 'a4');
      return (await extractText(await getDocumentProxy(new Uint8Array(bytes)), { mergePages: true })).text.replace(/\s+/g, ' ');
    };
    expect(await read([{ x: 0.5, y: 0.25 }])).toContain('strip.jpg; enlarged; the frame in the corner shows which part of the photo');
    expect(await read([])).not.toContain('enlarged');
  });

  it('shows everything that is marked in the part that it enlarges, and no part where the marks fill the photo', () => {
    const corner = [{ number: 1, points: [{ x: 0.01, y: 0.99 }] }];
    const outline = [{ number: 1, points: [0.4, 0.5, 0.55].map((x) => ({ x, y: x / 2 })) }];
    for (const marks of [corner, outline]) {
      const part = closeUpOf(marks);
      if (!part) throw new Error('Expected a part to be enlarged');
      expect(Math.min(part.left, part.top)).toBeGreaterThanOrEqual(0);
      expect(Math.max(part.left, part.top) + part.side).toBeLessThanOrEqual(1);
      const shown = marksOn(part, marks).flatMap(({ points }) => points.flatMap(({ x, y }) => [x, y]));
      expect(Math.min(...shown)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...shown)).toBeLessThanOrEqual(1);
    }
    expect(
      closeUpOf([
        {
          number: 1,
          points: [
            { x: 0.1, y: 0.1 },
            { x: 0.9, y: 0.5 },
          ],
        },
      ]),
    ).toBeNull();
    expect(closeUpOf([])).toBeNull();
  });

  it('stays one page with everything at its longest, in letters that its fonts lack', async () => {
    const long = {
      ...FACTS,
      code: 'Ж'.repeat(60),
      photos: Array.from({ length: 50 }, (_, at) => ({
        ...{ photoId: `${at}`, originalName: `${'鳥'.repeat(200)}.jpg` },
        view: 'abdomen-inside' as const,
        ...{ filedElsewhere: false, widthPx: 4, heightPx: 3, pins: [] },
      })),
    };
    const statement = sexStatement(long);
    const bytes = await sexStatementPdf(statement, [], 'letter');
    const document = await PDFDocument.load(bytes);
    expect([document.getPageCount(), imagesOf(document)]).toEqual([1, 0]);
    // What another program reads back (Mozilla's PDF.js, in `unpdf`).
    const { text } = await extractText(await getDocumentProxy(new Uint8Array(bytes)), { mergePages: true });
    const read = text.replace(/\s+/g, ' ');
    expect(read).toContain('(shortened to fit one page)');
    for (const { label } of statement.rows) expect(read).toContain(label);
    expect(read).toContain('comparison with a skin of known sex and a second reader');
    expect(read).toContain(statement.closing);
  });
});
