import type { Page } from '@playwright/test';
import { expect, test } from '../support/hosts.ts';

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

test.describe('Examination', () => {
  test('a skin is read, signed with its evidence, contradicts an earlier reading, and is withdrawn', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('button', { name: 'Show skins already read' }).press('Enter');
    await page.getByLabel('Find an animal').fill('bramble');
    await page.getByRole('link', { name: /Bramble.*Shed instar 10/ }).press('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Skin of instar 10');
    await expect(page.getByText('is now in instar 11')).toBeVisible();
    const support = page.getByRole('status', { name: 'What the answers support' });
    await expect(support).toHaveText(/Female\s*nothing yet\s*Male\s*nothing yet/);

    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('Choose one')).toBeVisible();

    await answer(page, /Does this skin belong/, 'Yes');
    await page.getByLabel('Leg span of this skin').fill('76');
    await answer(page, /grade/, 'A: flat and complete');
    await answer(page, /four book lungs/, 'Yes');
    await answer(page, 'Side', 'Both');
    await answer(page, /flap/, 'Seen');
    // Males of this genus carry look-alikes: without the lip it is no more than a leaning.
    await expect(support).toHaveText(/Female\s*up to leaning/);
    await answer(page, /uterus externus/, 'Seen');
    await expect(support).toHaveText(/Female\s*up to strong\s*Male\s*nothing yet/);

    await page.getByRole('checkbox', { name: /inner side/ }).press('Space');
    await answer(page, 'What is it?', 'Female');
    await expect(page.getByRole('radio', { name: 'Established' })).toBeDisabled();
    await answer(page, 'How sure?', 'Strong');
    await expect(page.getByRole('checkbox', { name: /Signing also writes grade A/ })).toHaveCount(0);
    await page.getByLabel('Read by').fill('Ottokar Venn');
    await page.getByRole('button', { name: 'Sign', exact: true }).press('Enter');
    await expect(page.getByText('Signed: female, strong.')).toBeVisible();
    await expect(page.getByText('The record of this animal contradicts itself.')).toBeVisible();
    await expect(page.getByText('Stands against another reading of this animal:')).toHaveCount(2);
    const signed = page.getByRole('listitem').filter({ hasText: /Read by Ottokar Venn/ });
    await signed.getByText('All answers, as signed').click();
    await expect(signed.getByText('76 mm')).toBeVisible();

    await signed.getByRole('button', { name: 'Withdraw' }).press('Enter');
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'Withdraw' }).press('Enter');
    await expect(dialog.getByText('A reason is needed')).toBeVisible();
    await dialog.getByLabel('Why?').fill('Another skin lay in the dish.');
    await dialog.getByRole('button', { name: 'Withdraw' }).press('Enter');
    await expect(dialog).toBeHidden();
    await expect(page.getByText('contradicts itself')).toBeHidden();
    await expect(page.getByText('Another skin lay in the dish.')).toBeVisible();
    await page.reload();
    await expect(page.getByText('Another skin lay in the dish.')).toBeVisible();
  });

  test('a reading under way survives a visit to another room', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await answer(page, /flap/, 'Readable and absent');
    await page.getByLabel('Leg span of this skin').fill('31');
    await page.getByRole('link', { name: 'Cabinet', exact: true }).press('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Cabinet');
    await page.goBack();
    await expect(page.getByLabel('Leg span of this skin')).toHaveValue('31');
    await expect(page.getByRole('group', { name: /flap/ }).getByRole('radio', { name: 'Readable and absent' })).toBeChecked();
    await expect(page.getByRole('status', { name: 'What the answers support' })).toHaveText(/Male\s*up to leaning/);
  });

  test('grade D closes every question about the strip', async ({ page }) => {
    await toTheExamination(page);
    await page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).press('Enter');
    await answer(page, /flap/, 'Seen');
    await answer(page, /grade/, 'D: missing or eaten');
    await expect(page.getByText('Closed: with grade D there is no strip to read.')).toHaveCount(6);
    await expect(page.getByRole('group', { name: /flap/ }).getByRole('radio', { name: 'Cannot tell' })).toBeChecked();
    await expect(page.getByRole('group', { name: /flap/ }).getByRole('radio', { name: 'Seen' })).toBeDisabled();
  });
});
