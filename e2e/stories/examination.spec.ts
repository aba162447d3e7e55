import type { Page } from '@playwright/test';
import { expect, test } from '../support/hosts.ts';
import { expectAccessible, expectKeysForAThumb } from '../support/pageChecks.ts';

/** Fills the archive with the sample cabinet and goes to the room. */
async function toTheExamination(page: Page): Promise<void> {
  const task = await page.evaluate(async () => (await (await fetch('/api/sample-cabinet', { method: 'POST' })).json()).id as string);
  const state = () => page.evaluate(async (id) => (await (await fetch(`/api/tasks/${id}`)).json()).state as string, task);
  await expect.poll(state, { timeout: 60_000 }).toBe('done');
  await page.reload();
  await page.getByRole('link', { name: 'Examination' }).press('Enter');
}

/** Answers one question from the keyboard. */
async function answer(page: Page, question: RegExp | string, choice: string): Promise<void> {
  const radio = page.getByRole('group', { name: question }).getByRole('radio', { name: choice, exact: true });
  await radio.press('Space');
  await expect(radio).toBeChecked();
}

async function go(page: Page, step: string): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Steps of the reading' })
    .getByRole('button', { name: new RegExp(`^${step}`) })
    .press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: step })).toBeFocused();
}

/** Answers whose skin it is as another window would. */
async function elsewhere(page: Page, skinMatchesAnimal: 'no' | 'cannot-tell'): Promise<void> {
  const exuviaId = page.url().split('/').at(-1) ?? '';
  const taken = await page.evaluate(
    async ([id, answered]) => {
      const address = `/api/exuviae/${id}/examination`;
      const { underWay } = await (await fetch(address)).json();
      const reading = { ...underWay.reading, checklist: { ...underWay.reading.checklist, skinMatchesAnimal: answered } };
      const headers = { 'content-type': 'application/json', 'if-match': `"${underWay.version}"` };
      return (await fetch(address, { method: 'PUT', headers, body: JSON.stringify({ reading }) })).ok;
    },
    [exuviaId, skinMatchesAnimal] as const,
  );
  expect(taken).toBe(true);
}

const comesTo = (page: Page) => page.getByRole('status', { name: 'What the answers come to' });
const kept = (page: Page) => expect(page.getByText('Kept as a reading under way.')).toBeVisible();

test.describe('Examination', () => {
  test('a skin is read step by step, signed with a pinned photo, contradicts an earlier reading, and is withdrawn', async ({ page }) => {
    test.setTimeout(150_000);
    await toTheExamination(page);
    await page.getByRole('button', { name: 'Show skins already read' }).press('Enter');
    await page.getByLabel('Find an animal').fill('bramble');
    await page.getByRole('link', { name: /Bramble.*Shed instar 10/ }).press('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skin of instar 10');
    await expect(page.getByText('is now in instar 11')).toBeVisible();

    // A skin that was read shows what was signed; another reading is begun when somebody wants it.
    await expect(page.getByRole('region', { name: 'This skin has been read' })).toContainText(/Signed by .*, grade/);
    await page.getByRole('button', { name: 'Read this skin once more' }).press('Enter');

    // The signature is reached at once, and says what it lacks.
    await go(page, 'Sign');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByRole('alert')).toContainText('Choose one');
    await page.getByRole('listitem').filter({ hasText: 'Does this skin belong' }).getByRole('button', { name: 'Match' }).press('Enter');

    await answer(page, /Does this skin belong/, 'Yes');
    await page.getByLabel('Leg span of this skin').fill('76');
    await page.getByRole('button', { name: 'Next: Grade' }).press('Enter');
    await answer(page, /grade/, 'A: flat and complete');
    await page.getByRole('button', { name: 'Next: Prepare' }).press('Enter');
    await expect(page.getByText('Skins keep their urticating setae')).toBeVisible();
    await page.getByRole('button', { name: 'Next: Orient' }).press('Enter');
    await answer(page, /four book lungs/, 'Yes');
    await answer(page, 'Side', 'Both');
    await answer(page, 'Enlarged by', 'Stereomicroscope');
    await page.getByRole('button', { name: 'Next: Look' }).press('Enter');
    // What the genus shows, and what misleads in it, stands before the first question about the strip.
    const before = page.getByRole('region', { name: /Before you look: Brachypelma/ });
    await expect(before).toContainText('A female shows:');
    await expect(before).toContainText('Males of this genus carry accessory organs');
    await answer(page, /looked up first/, 'Yes');
    await answer(page, /Is there a flap/, 'Seen');
    // Males of this genus carry look-alikes: without the lip it is no more than a leaning.
    await expect(comesTo(page)).toContainText('as female up to leaning');
    await answer(page, /uterus externus/, 'Seen');
    await expect(comesTo(page)).toContainText('may be signed as female up to strong.');

    // A point on the photo, by keyboard alone.
    await page.getByRole('button', { name: /^Pin a photo to: Is there a flap/ }).press('Enter');
    const pin = page.getByRole('dialog', { name: /Is there a flap/ });
    await pin.getByLabel('Which photo shows it?').selectOption({ label: await optionWith(page, /inner side/) });
    await pin.getByRole('radio', { name: 'A point' }).press('Space');
    await pin.getByRole('button', { name: 'Pin this photo' }).press('Enter');
    await expect(pin.getByText('Place the point')).toBeVisible();
    const picture = pin.getByRole('button', { name: /place a mark/ });
    await picture.press('ArrowRight');
    await picture.press('ArrowUp');
    await picture.press('Enter');
    // What was placed, and the keys to take it back, are seen with the photo and the foot of the dialog, in a small window too.
    await page.setViewportSize({ width: 1024, height: 700 });
    await expect(pin.getByText('The point is placed.')).toBeInViewport({ ratio: 1 });
    await expect(pin.getByRole('button', { name: 'Begin the mark anew' })).toBeInViewport({ ratio: 1 });
    await page.setViewportSize({ width: 1440, height: 900 });
    await pin.getByRole('button', { name: 'Pin this photo' }).press('Enter');
    await expect(pin).toBeHidden();
    await expect(page.getByRole('button', { name: /Pinned:.*bramble-10-abdomen-inside.*with a point/ })).toBeVisible();
    await expect(page.getByRole('checkbox', { name: /bramble-10-abdomen-inside/ })).toBeChecked();

    await go(page, 'Compare');
    await expect(page.getByRole('button', { name: 'Edit this profile' })).toBeVisible();
    await go(page, 'Conclude');
    await expect(page.getByRole('heading', { name: 'What carries it' })).toBeVisible();
    await expect(page.getByText(/Receptacles seen, on this skin/)).toBeVisible();
    await expect(page.getByText(/0\.\d\d/)).toHaveCount(0);
    await answer(page, 'What is it?', 'Female');
    await expect(page.getByRole('radio', { name: 'Established' })).toBeDisabled();
    await answer(page, 'How sure?', 'Strong');

    await go(page, 'Sign');
    await expect(page.getByRole('checkbox', { name: /Signing also writes grade A/ })).toHaveCount(0);
    await page.getByLabel('Read by').fill('Ottokar Venn');
    await page.getByLabel('Read on').fill('2001-01-01');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText(/This skin was shed on \d+ \w+ \d+/)).toBeVisible();
    await page.getByLabel('Read on').fill(await page.evaluate(async () => (await (await fetch('/api/about')).json()).today as string));
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('Signed: female, strong.')).toBeVisible();
    await expect(page.getByRole('region', { name: 'This skin has been read' })).toContainText('Signed by Ottokar Venn');
    // Whoever signed at the foot of a long page stands at what came of it, and reads with which photos it was signed.
    await expect(page.getByRole('heading', { name: 'This skin has been read' })).toBeFocused();
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    await expect(page.getByText('Signed with 1 photo as evidence.')).toBeVisible();
    await expect(page.getByText('No photo chosen as evidence.')).toBeHidden();
    await expect(page.getByRole('navigation', { name: 'Steps of the reading' })).toBeHidden();
    await expect(page.getByText('The record of this animal contradicts itself.')).toBeVisible();
    await expect(page.getByText('Contradicted later by: female, strong, read by Ottokar Venn')).toBeVisible();
    await page.getByRole('button', { name: 'Statement of sex' }).press('Enter');
    const statement = page.getByRole('dialog', { name: 'Statement of sex' });
    await expect(statement.getByText('Sex: unsexed. The readings on record contradict each other.')).toBeVisible();
    await expect(statement.getByText(/female, strong, read from the skin shed .* by Ottokar Venn/)).toBeVisible();
    await expect(statement.getByText('Darwin Core term “sex”: indeterminate')).toBeVisible();
    await page.keyboard.press('Escape');
    const signed = page.getByRole('listitem').filter({ hasText: /Read by Ottokar Venn/ });
    await signed.getByText('All answers, as signed').click();
    await expect(signed.getByText('76 mm')).toBeVisible();
    await signed.getByRole('button', { name: /Open bramble-10-abdomen-inside/ }).press('Enter');
    await expect(page.getByRole('dialog').getByText('(a point)')).toBeVisible();
    await page.keyboard.press('Escape');

    await signed.getByRole('button', { name: 'Withdraw' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'Withdraw' }).press('Enter');
    await expect(dialog.getByText('A reason is needed')).toBeVisible();
    await dialog.getByLabel('Why?').fill('Another skin lay in the dish.');
    await dialog.getByRole('button', { name: 'Withdraw' }).press('Enter');
    await expect(dialog).toBeHidden();
    await expect(page.getByText('contradicts itself')).toBeHidden();
    await page.reload();
    await expect(page.getByText('Another skin lay in the dish.')).toBeVisible();
  });

  test('a reading under way outlives the window, is resumed at its step, and can be given up and taken back', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await page.getByLabel('Leg span of this skin').fill('31');
    await go(page, 'Look');
    await answer(page, /Is there a flap/, 'Readable and absent');
    await kept(page);
    await page.getByRole('link', { name: 'Examination', exact: true }).press('Enter');
    await page.reload();
    await page.getByRole('link', { name: /Saffron.*Shed instar 11.*reading begun/ }).press('Enter');
    await expect(page.getByRole('heading', { level: 2, name: 'Look' })).toBeVisible();
    await expect(page.getByRole('group', { name: /Is there a flap/ }).getByRole('radio', { name: 'Readable and absent' })).toBeChecked();
    await expect(comesTo(page)).toContainText('neither sex can be signed yet');
    await page.getByRole('button', { name: 'Give up this reading' }).press('Enter');
    await expect(page.getByText(/^Nothing answered yet/)).toBeVisible();
    await page.getByRole('button', { name: 'Undo' }).press('Enter');
    await kept(page);
    await go(page, 'Match');
    await expect(page.getByLabel('Leg span of this skin')).toHaveValue('31');
  });

  test('two windows on one reading: the later one is told, and nothing is lost unasked', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await answer(page, /Does this skin belong/, 'Yes');
    await kept(page);
    await elsewhere(page, 'cannot-tell');
    await answer(page, /Does this skin belong/, 'No');
    await expect(page.getByText('This reading was changed in another window.')).toBeVisible();
    await page.getByRole('button', { name: 'Show the other one' }).press('Enter');
    await expect(page.getByRole('group', { name: /Does this skin belong/ }).getByRole('radio', { name: 'Cannot tell' })).toBeChecked();
  });

  test('a signature takes nothing with it that another window answered since', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await answer(page, /Does this skin belong/, 'Yes');
    await go(page, 'Conclude');
    await answer(page, 'What is it?', 'Unsexed');
    await go(page, 'Sign');
    await page.getByLabel('Read by').fill('Ottokar Venn');
    await kept(page);
    await elsewhere(page, 'no');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('This reading was changed in another window.')).toBeVisible();
    await page.getByRole('button', { name: 'Show the other one' }).press('Enter');
    // It comes from the archive, and stands at the step that it was left at.
    await expect(page.getByText('This reading was changed in another window.')).toBeHidden();
    await go(page, 'Match');
    await expect(page.getByRole('group', { name: /Does this skin belong/ }).getByRole('radio', { name: 'No', exact: true })).toBeChecked();
  });

  test('grade D closes every question about the strip, and lets the skin be signed as unsexed', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await go(page, 'Look');
    await answer(page, /Is there a flap/, 'Seen');
    await go(page, 'Grade');
    await answer(page, /grade/, 'D: missing or eaten');
    await expect(page.getByText('Grade D ends what the strip can say.')).toBeVisible();
    await go(page, 'Look');
    await expect(page.getByText('Closed: with grade D there is no strip to read.')).toHaveCount(6);
    await expect(page.getByRole('group', { name: /Is there a flap/ }).getByRole('radio', { name: 'Cannot tell' })).toBeChecked();
    await expect(page.getByRole('group', { name: /Is there a flap/ }).getByRole('radio', { name: 'Seen' })).toBeDisabled();
    // A slip costs nothing: another grade brings the answer back.
    await go(page, 'Grade');
    await answer(page, /grade/, 'B: folded or cloudy');
    await go(page, 'Look');
    await expect(page.getByRole('group', { name: /Is there a flap/ }).getByRole('radio', { name: 'Seen' })).toBeChecked();
    await go(page, 'Grade');
    await answer(page, /grade/, 'D: missing or eaten');
    await go(page, 'Conclude');
    await answer(page, 'What is it?', 'Unsexed');
    await go(page, 'Sign');
    await page.getByLabel('Read by').fill('Ottokar Venn');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('Signed: unsexed.')).toBeVisible();
  });

  test('an evidence photo that is removed meanwhile is missed, and left out before signing', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    const box = page.getByRole('checkbox', { name: /saffron-11-dorsal/ });
    await box.press('Space');
    await kept(page);
    const exuvia = page.url().split('/').at(-1) ?? '';
    await page.evaluate(async (id) => {
      const sheet = await (await fetch(`/api/exuviae/${id}/examination`)).json();
      await fetch(`/api/photos/${sheet.photos[0].id}`, { method: 'DELETE' });
    }, exuvia);
    await page.reload();
    await expect(page.getByText('1 photo chosen as evidence is no longer with this skin.')).toBeVisible();
    await go(page, 'Conclude');
    await answer(page, 'What is it?', 'Unsexed');
    await go(page, 'Sign');
    await page.getByLabel('Read by').fill('Ottokar Venn');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByRole('alert').first()).toBeVisible();
    await page.getByRole('button', { name: 'Leave it out' }).press('Enter');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('Signed: unsexed.')).toBeVisible();
  });

  test('every key of every step is at least 40 pixels high at 1024 by 700, and none waits for a pointer to hover', async ({ page }) => {
    await page.setViewportSize({ width: 1024, height: 700 });
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    for (const step of ['Match', 'Grade', 'Prepare', 'Orient', 'Look', 'Compare', 'Conclude', 'Sign']) {
      if (step !== 'Match') await go(page, step);
      await expectKeysForAThumb(page, step);
    }
  });

  for (const theme of ['light', 'dark'] as const) {
    test(`axe-core finds no fault with any step, ${theme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: theme });
      await toTheExamination(page);
      await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
      for (const step of ['Match', 'Grade', 'Prepare', 'Orient', 'Look', 'Compare', 'Conclude', 'Sign']) {
        if (step !== 'Match') await go(page, step);
        await expectAccessible(page, `${step}, ${theme}`);
      }
    });
  }
});

/** The one choice of a list whose words fit. */
async function optionWith(page: Page, words: RegExp): Promise<string> {
  const options = await page.getByRole('dialog').getByRole('option').allTextContents();
  const found = options.find((option) => words.test(option));
  if (found === undefined) throw new Error(`Expected a choice like ${words} among ${options.join(' | ')}`);
  return found;
}
