import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { cutAsJpeg, stackedPng } from '../../src/images/plateSheets.ts';

/** Left half red, right half clear. */
async function halfCut(): Promise<Buffer> {
  const red = await sharp({ create: { width: 20, height: 30, channels: 4, background: '#ff0000' } })
    .png()
    .toBuffer();
  return sharp({ create: { width: 40, height: 30, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
    .composite([{ input: red, left: 0, top: 0 }])
    .webp({ lossless: true })
    .toBuffer();
}

async function pixel(picture: Buffer, left: number, top: number): Promise<number[]> {
  return [...(await sharp(picture).extract({ left, top, width: 1, height: 1 }).removeAlpha().raw().toBuffer())];
}

describe('pictures of a contact sheet', () => {
  it('show the part that is asked for, clear parts as paper', async () => {
    const whole = await cutAsJpeg(await halfCut(), { left: 0, top: 0, width: 1, height: 1 });
    expect(await sharp(whole).metadata()).toMatchObject({ format: 'jpeg', width: 40, height: 30 });
    const right = await cutAsJpeg(await halfCut(), { left: 0.5, top: 0, width: 0.5, height: 1 });
    expect(await sharp(right).metadata()).toMatchObject({ width: 20, height: 30 });
    for (const channel of await pixel(right, 10, 10)) expect(channel).toBeGreaterThan(230);
    const [red = 0, green = 255] = await pixel(whole, 10, 10);
    expect(red - green).toBeGreaterThan(200);
  });

  it('stand where they belong on each page, with the writing over them', async () => {
    const cut = await cutAsJpeg(await halfCut(), { left: 0, top: 0, width: 0.5, height: 1 });
    const drawing = '<svg xmlns="http://www.w3.org/2000/svg" width="100" height="60"><rect x="90" y="50" width="10" height="10"/></svg>';
    const place = { picture: cut, leftPx: 10, topPx: 5, widthPx: 40, heightPx: 20 };
    const sheet = await stackedPng(
      [
        { places: [place], drawing },
        { places: [{ ...place, leftPx: 55 }], drawing },
      ],
      { widthPx: 100, heightPx: 60 },
    );
    expect(await sharp(sheet).metadata()).toMatchObject({ format: 'png', width: 100, height: 120 });
    for (const [left, top] of [
      [30, 15],
      [75, 75],
    ] as const) {
      const [red = 0, green = 255] = await pixel(sheet, left, top);
      expect(red - green).toBeGreaterThan(200);
    }
    for (const top of [55, 115]) expect(await pixel(sheet, 95, top)).toEqual([0, 0, 0]);
    for (const channel of await pixel(sheet, 30, 75)) expect(channel).toBeGreaterThan(230);
  });
});
