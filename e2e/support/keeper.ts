import { expect, type Locator, type Page } from '@playwright/test';
import { BenchRoom } from './benchRoom.ts';

export type Room = 'Cabinet' | 'Intake' | 'Bench' | 'Ladder' | 'Examination' | 'Watch';

/** What a keeper gives to a photo that waits in Intake. */
export interface Giving {
  readonly photo: string;
  readonly to: string;
  readonly instarShed?: string;
  /** The day of the molt; the day of the photo where it is not said. */
  readonly moltedOn?: string;
}

/** Somebody who uses Exuviary, by what they see and what it is called. Asks for no class, no id, no test mark. */
export class Keeper {
  readonly page: Page;
  readonly bench: BenchRoom;

  constructor(page: Page) {
    this.page = page;
    this.bench = new BenchRoom(page);
  }

  /** The name of the page that is open. */
  heading(): Locator {
    return this.page.getByRole('heading', { level: 1 });
  }

  async goTo(room: Room): Promise<void> {
    await this.page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: room, exact: true }).click();
    await expect(this.heading()).toHaveText(room);
  }

  async beginEmpty(): Promise<void> {
    await this.page.getByRole('button', { name: 'Begin empty' }).click();
    await expect(this.page.getByRole('heading', { name: 'An empty cabinet' })).toBeVisible();
  }

  /** Sets the time of what is noted next so many hours back, and leaves it there. */
  async wasEarlier(pad: Locator, hours: number): Promise<void> {
    const earlier = pad.getByRole('button', { name: 'It was earlier' });
    const back = pad.getByRole('button', { name: 'Back to now' });
    await expect(earlier.or(back)).toBeVisible();
    if (await back.isVisible()) await back.click();
    await earlier.click();
    const [day, time] = [pad.getByLabel('Seen on'), pad.getByLabel('Seen at')];
    const before = Date.parse(`${await day.inputValue()}T${await time.inputValue()}:00Z`) - hours * 3_600_000;
    const typed = new Date(before).toISOString();
    await day.fill(typed.slice(0, 10));
    await time.fill(typed.slice(11, 16));
  }

  async openSample(): Promise<void> {
    await this.page.getByRole('button', { name: 'Open the sample cabinet' }).click();
    await expect(this.heading()).toHaveText('Cabinet', { timeout: 120_000 });
  }

  /** Adds an animal from the Cabinet; ends on its page. */
  async addSpecimen(specimen: { code: string; taxon: string; name: string }): Promise<void> {
    await this.page.getByRole('button', { name: 'Add a specimen' }).click();
    const dialog = this.page.getByRole('dialog', { name: 'Add a specimen' });
    await dialog.getByLabel('Code').fill(specimen.code);
    await dialog.getByLabel('Species').fill(specimen.taxon);
    await dialog.getByLabel('Name', { exact: true }).fill(specimen.name);
    await dialog.getByRole('button', { name: 'Add', exact: true }).click();
    await expect(this.heading()).toHaveText(specimen.taxon);
  }

  /** The line of one animal in the Cabinet. */
  animal(code: string): Locator {
    return this.page.getByRole('listitem').filter({ has: this.page.getByRole('link', { name: code }) });
  }

  /** Goes to one step of the Examination. */
  async toStep(step: string): Promise<void> {
    const steps = this.page.getByRole('navigation', { name: 'Steps of the reading' });
    await steps.getByRole('button', { name: new RegExp(`^${step}`) }).click();
    await expect(this.page.getByRole('heading', { level: 2, name: step })).toBeVisible();
  }

  /** Answers one question of the step that is open. */
  async answer(question: RegExp | string, choice: string): Promise<void> {
    await this.page.getByRole('group', { name: question }).getByRole('radio', { name: choice, exact: true }).check();
  }

  /** Hands files over through the file dialog of Intake, without waiting for what becomes of them. */
  async choosePhotos(files: string[]): Promise<void> {
    const chooser = this.page.waitForEvent('filechooser');
    await this.page.getByRole('button', { name: 'Choose photos' }).click();
    await (await chooser).setFiles(files);
  }

  /** The report of an import that has ended. */
  report(): Locator {
    return this.page.getByRole('region', { name: 'What came in' });
  }

  async bringIn(files: string[], outcome: string): Promise<void> {
    await this.choosePhotos(files);
    await expect(this.report().getByRole('status')).toHaveText(outcome, { timeout: 60_000 });
  }

  /** Gives one waiting photo to the skin of a new molt. */
  async give({ photo, to, instarShed = '', moltedOn }: Giving): Promise<void> {
    await this.page.getByRole('checkbox', { name: photo }).check();
    const panel = this.page.getByRole('region', { name: 'Whose skin is it?' });
    await panel.getByRole('radio', { name: to }).check();
    await panel.getByLabel('Skin of the molt').selectOption('A new molt');
    if (moltedOn === undefined) await panel.getByRole('button', { name: /^The day of the photo/ }).click();
    else await panel.getByLabel('Molted on').fill(moltedOn);
    await panel.getByLabel('Instar shed').fill(instarShed);
    await panel.getByRole('button', { name: `Give it to ${to}` }).click();
    await expect(this.page.getByText(`1 photo given to ${to}.`)).toBeVisible();
  }

  /** From an empty archive to the Bench with one photo of a new animal on it. */
  async layOnBench(file: string, giving: Giving): Promise<void> {
    await this.beginEmpty();
    await this.addSpecimen({ code: giving.to, taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
    await this.goTo('Intake');
    await this.bringIn([file], '1 photo added');
    await this.give(giving);
    await this.page.getByRole('link', { name: 'Measure it on the Bench' }).click();
    await this.bench.shown();
  }

  /** What the archive answers to the page; for what no screen shows. */
  async asks<Answer>(address: string): Promise<Answer> {
    return (await this.page.evaluate(async (path) => (await fetch(path)).json(), address)) as Answer;
  }
}

/** An estimate as it stands on screen, both figures in mm: "10.31 ± 0.25 mm". */
export function shownEstimate(shown: string | null): { value: number; uncertainty: number } {
  const [, value, uncertainty] = /(\d+(?:\.\d+)?)\s*±\s*(\d+(?:\.\d+)?)/.exec(shown ?? '') ?? [];
  if (value === undefined || uncertainty === undefined) throw new Error(`Expected a length with its uncertainty but read "${shown}"`);
  return { value: Number(value), uncertainty: Number(uncertainty) };
}

export function millimeters(shown: string | null): number {
  return shownEstimate(shown).value;
}

/** How far a value lies from the truth, in percent of it. */
export function percentOff(value: number, truth: number): number {
  return (100 * Math.abs(value - truth)) / truth;
}
