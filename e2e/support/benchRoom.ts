import { expect, type Locator, type Page } from '@playwright/test';
import type { PixelPlace } from './photoTruth.ts';

/** Room that the Bench leaves round a photo shown whole, in CSS pixels. */
const MARGIN_CSS = 16;
/** Nobody needs more presses than this to put a point right that was clicked by eye. */
const MOST_PRESSES = 60;

type Step = 'Known size' | 'Points' | 'Lengths';

/** The Bench as a keeper works on it: clicks on the photo, arrow keys for the rest, and reads the panel beside it. */
export class BenchRoom {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  photo(): Locator {
    return this.page.getByRole('application', { name: 'Photo with its points' });
  }

  /** What of the photo takes the keys. */
  keys(): Locator {
    return this.photo().locator('canvas[tabindex]');
  }

  panel(): Locator {
    return this.page.getByRole('tabpanel');
  }

  button(name: string | RegExp): Locator {
    return this.page.getByRole('region', { name: 'Bench' }).getByRole('button', { name });
  }

  /** Waits until the photo itself, not its smaller copy, is drawn. */
  async shown(): Promise<void> {
    await expect(this.photo()).toHaveAttribute('data-picture', 'original', { timeout: 30_000 });
  }

  /** The enlarged patch of the photo beside the pointer. */
  loupe(): Locator {
    return this.photo().locator('canvas').last();
  }

  async take(step: Step): Promise<void> {
    await this.page.getByRole('tab', { name: step }).click();
  }

  /** Until the archive has confirmed every change. */
  async saved(): Promise<void> {
    await expect(this.page.getByText(/^All saved/)).toBeVisible();
  }

  /** Where a place of the photo lies in the window while the whole photo is shown. */
  async inWindow(place: PixelPlace, picture: { width: number; height: number }): Promise<PixelPlace> {
    await this.button('Whole photo (0)').click();
    const box = await this.photo().boundingBox();
    if (box === null) throw new Error('Expected the photo to be visible');
    const zoom = Math.min((box.width - 2 * MARGIN_CSS) / picture.width, (box.height - 2 * MARGIN_CSS) / picture.height);
    return {
      x: box.x + (box.width - zoom * picture.width) / 2 + zoom * place.x,
      y: box.y + (box.height - zoom * picture.height) / 2 + zoom * place.y,
    };
  }

  /** What is drawn of the middle of the photo, away from buttons and words: from a quarter to three quarters of each side. */
  async middleOfPhoto(picture: { width: number; height: number }): Promise<Buffer> {
    const from = await this.inWindow({ x: picture.width / 4, y: picture.height / 4 }, picture);
    const to = await this.inWindow({ x: (3 * picture.width) / 4, y: (3 * picture.height) / 4 }, picture);
    return await this.page.screenshot({ clip: { ...from, width: to.x - from.x, height: to.y - from.y } });
  }

  async hover(place: PixelPlace, picture: { width: number; height: number }): Promise<void> {
    const { x, y } = await this.inWindow(place, picture);
    await this.page.mouse.move(x, y);
  }

  async click(place: PixelPlace, picture: { width: number; height: number }): Promise<void> {
    const { x, y } = await this.inWindow(place, picture);
    await this.page.mouse.click(x, y);
  }

  /** Clicks by eye, then moves the selected point with the arrow keys until its line in the list reads the place. */
  async place(part: string, name: string, place: PixelPlace, picture: { width: number; height: number }): Promise<void> {
    await this.click(place, picture);
    await this.nudge(this.point(part, name), place);
  }

  /** The line of a point in the list; also where its part of the skin is folded. */
  point(part: string, name: string): Locator {
    return this.part(part).getByRole('button', { name, includeHidden: true });
  }

  /** One part of the skin in the list of points. */
  part(name: string): Locator {
    return this.panel()
      .getByRole('group')
      .filter({ has: this.page.locator('summary', { hasText: name }) });
  }

  /** A mark on the scale object, in its list. */
  mark(name: string): Locator {
    return this.page.getByRole('list', { name: 'Marks on the scale object' }).getByRole('button', { name });
  }

  async nudge(line: Locator, to: PixelPlace): Promise<void> {
    await this.nudgeAxis(line, 0, to.x, 'ArrowLeft', 'ArrowRight');
    await this.nudgeAxis(line, 1, to.y, 'ArrowUp', 'ArrowDown');
  }

  private async nudgeAxis(line: Locator, axis: 0 | 1, to: number, less: string, more: string): Promise<void> {
    const target = Math.round(10 * to);
    for (let presses = 0; presses < MOST_PRESSES; presses++) {
      const tenths = target - Math.round(10 * (await placeIn(line))[axis]);
      if (tenths === 0) return;
      const step = Math.abs(tenths) >= 100 ? 'Shift+' : Math.abs(tenths) >= 10 ? '' : 'Alt+';
      await this.page.keyboard.press(`${step}${tenths < 0 ? less : more}`);
    }
    throw new Error(`Expected the arrow keys to bring the point to ${to} but it stands at ${(await placeIn(line))[axis]}`);
  }

  /** Marks the four corners of a scale object that has been chosen. */
  async markCorners(corners: readonly PixelPlace[], picture: { width: number; height: number }): Promise<void> {
    for (const corner of corners) await this.click(corner, picture);
    await expect(this.page.getByRole('list', { name: 'Marks on the scale object' }).getByRole('listitem')).toHaveCount(4);
  }

  /** Calibrates with the card at its true corners. */
  async scaleByCard(corners: readonly PixelPlace[], picture: { width: number; height: number }): Promise<void> {
    await this.take('Known size');
    await this.panel()
      .getByRole('button', { name: /^A bank-size card .*mm$/ })
      .click();
    await this.markCorners(corners, picture);
  }

  /** What the marks say about the picture: the value that stands beside its name. */
  fact(name: string): Locator {
    return this.panel().getByRole('term').filter({ hasText: name }).locator('xpath=following-sibling::dd[1]');
  }

  async enterHeight(heightMm: number): Promise<void> {
    await this.panel().getByRole('radio', { name: 'Measured', exact: true }).check();
    const field = this.panel().getByLabel('Height, mm');
    await field.fill(heightMm.toFixed(1));
    await field.press('Enter');
  }

  /** How high the selected point lies. */
  async enterPointHeight(heightMm: number): Promise<void> {
    const field = this.panel().getByLabel('This point, mm');
    await field.fill(heightMm.toFixed(2));
    await field.press('Enter');
  }

  /** The number in the table of lengths; a press of it opens its budget. */
  length(name: string): Locator {
    const row = this.panel()
      .getByRole('row')
      .filter({ has: this.page.getByRole('rowheader', { name: new RegExp(`^${name}( ?remarks|$)`) }) });
    return row.getByRole('button');
  }
}

/** "1091.4, 1094.7" at the end of a line of a list. */
async function placeIn(line: Locator): Promise<readonly [number, number]> {
  const read = /(-?\d+\.\d), (-?\d+\.\d)$/.exec((await line.textContent()) ?? '');
  if (read === null) throw new Error(`Expected a place but read "${await line.textContent()}"`);
  return [Number(read[1]), Number(read[2])];
}
