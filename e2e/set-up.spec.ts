import { readFileSync } from 'node:fs';
import { expect as expectSoon, test } from '@playwright/test';
import { printedFile, signedInFile } from './_support/run-folder';

/** The first pages of a start take their time. */
const expect = expectSoon.configure({ timeout: 20_000 });

test('nobody gets in before the link that the start printed was used, and the link works once', async ({ page }) => {
  await page.goto('/import');
  await expect(page).toHaveURL(/\/sign-in\?to=%2Fimport$/);
  const link = await printedLink();
  await page.goto(link);
  await page.getByLabel('Name').fill('Wren Tarrant');
  await page.getByLabel('E-mail address').fill('wren@holdfast.example');
  await page.getByLabel('Password').fill('password password');
  await page.getByRole('button', { name: 'Make the account' }).click();
  await expect(page.getByText('among those tried first')).toBeVisible();
  await expect(page.getByLabel('Name')).toHaveValue('Wren Tarrant');
  await page.getByLabel('Password').fill('seven lanterns under the pier');
  await page.getByRole('button', { name: 'Make the account' }).click();
  await expect(page.getByRole('link', { name: 'Wren Tarrant' })).toBeVisible();
  await page.context().storageState({ path: signedInFile() });
  await page.goto(link);
  await expect(page.getByRole('heading', { name: 'This link leads nowhere any more' })).toBeVisible();
});

/** The address stands in what the start printed, a moment after Holdfast answers. */
async function printedLink(): Promise<string> {
  const find = () => /http:\S+\/set-up\/\S+/.exec(readFileSync(printedFile(), 'utf8'))?.[0] ?? '';
  await expect.poll(find).not.toBe('');
  return find();
}
