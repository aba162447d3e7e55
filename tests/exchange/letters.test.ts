import { extractText, getDocumentProxy } from 'unpdf';
import { describe, expect, it } from 'vitest';
import { layOutSheet } from '../../src/domain/plate/sheet.ts';
import { contactSheetPdf } from '../../src/exchange/contactSheet/contactSheetPdf.ts';
import { LACKING_NOTE } from '../../src/exchange/letters.ts';
import { sexStatementPdf } from '../../src/exchange/sexStatement/sexStatementPdf.ts';
import { smallPicture } from '../support/smallPictures.ts';

const PLATE = { widthMm: 40, heightMm: 50, carapaceAtMm: 25, carapaceFromLeftMm: 20 };
/** Invented: Greek, Cyrillic, Polish, Czech, Turkish and Vietnamese letters, none of them in WinAnsi but the Western ones. */
const NAMES = ['Αράχνη', 'Паучиха Жужа', 'Łąka Gęśla', 'Žofie Řehoř', 'Işık', 'Nhện Đen'];

/** What another program reads back (Mozilla's PDF.js, in `unpdf`). */
async function textOf(pdf: Uint8Array): Promise<string> {
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: true });
  return text.normalize('NFC').replace(/\s+/g, ' ');
}

async function sheetOf(title: string): Promise<Uint8Array> {
  const words = {
    title,
    taxon: 'Grammostola pulchra',
    code: 'Ś-1',
    captions: [['Instar 7', 'shed 1 Jan 2024', 'carapace 10.00 mm ± 0.20 mm']],
    note: '',
  };
  return contactSheetPdf(layOutSheet([PLATE], 'a4', 'fitted'), words, new Map([[0, await smallPicture(1, 'jpeg')]]));
}

function statementOf(name: string): Promise<Uint8Array> {
  const rows = [{ label: 'Animal', text: `${name}, −3 °C, 14.6 mm ± 0.3 mm` }];
  return sexStatementPdf({ title: 'Statement of sex', claim: 'Sex: probable female.', rows, closing: 'No guarantee of nature.' }, [], 'a4');
}

describe('letters of PDFs that leave', () => {
  it.each(NAMES)('are read back as they were: %s', async (name) => {
    const sheet = await textOf(await sheetOf(name));
    for (const words of [name, 'Grammostola pulchra', 'Ś-1', '10.00 mm ± 0.20 mm']) expect(sheet).toContain(words);
    const statement = await textOf(await statementOf(name));
    expect(statement).toContain(`${name}, −3 °C, 14.6 mm ± 0.3 mm`);
    for (const text of [sheet, statement]) expect(text).not.toContain(LACKING_NOTE);
  });

  it('are marked where even the font lacks them, and the page says so', async () => {
    for (const pdf of [await sheetOf('Kumo 蜘蛛'), await statementOf('Kumo 蜘蛛')]) {
      const text = await textOf(pdf);
      expect(text).toContain('Kumo □□');
      expect(text).toContain(LACKING_NOTE);
    }
  });

  it('make the same bytes each time and stay small', async () => {
    const first = await statementOf(NAMES.join(' '));
    expect(await statementOf(NAMES.join(' '))).toEqual(first);
    expect(first.byteLength).toBeLessThan(120_000);
  });
});
