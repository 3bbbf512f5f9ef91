import { expect as expectSoon, type Page, test } from '@playwright/test';
import { mailServer } from './_support/mail-server';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const SITE = '/sites/lighthouse';
const NAME = 'Tamsin Wrack';
const EMAIL = 'tamsin@holdfast.example';

// After first-run: a site called Lighthouse Rooms is there, and whoever set Holdfast up is signed in.
test('somebody is let in by mail, does what their role allows, leaves, and is erased', async ({ page, browser }) => {
  const mail = await mailServer();
  await page.goto(`${SITE}/people`);
  await page.getByLabel('Name', { exact: true }).fill(NAME);
  await page.getByLabel('E-mail address').fill(EMAIL);
  await page.getByRole('combobox', { name: 'Role' }).selectOption('aquarist');
  await page.getByRole('button', { name: 'Let them in' }).click();
  await expect(page.getByText('The link is on its way to them by mail.')).toBeVisible();
  await expect.poll(() => mail.messages.length).toBe(1);
  expect(mail.messages[0]?.to).toBe(EMAIL);
  const link = /http:\S+\/join\/\S+/.exec(mail.messages[0]?.text ?? '')?.[0] ?? '';
  await mail.close();

  const theirs = await browser.newPage({ storageState: { cookies: [], origins: [] } });
  await theirs.goto(link);
  await theirs.getByLabel('Password').fill('eleven whelks beside the slipway');
  await theirs.getByRole('button', { name: 'Keep it and sign in' }).click();
  await expect(theirs.getByRole('link', { name: NAME })).toBeVisible();
  await theirs.goto(`${SITE}/record`);
  await expect(theirs.getByText(`Let ${NAME} in as aquarist`)).toBeVisible();
  await expect(theirs.getByRole('button', { name: 'Work out every seal again' })).toHaveCount(0);
  await expect(theirs.getByRole('link', { name: 'People' })).toHaveCount(0);
  await theirs.goto(`${SITE}/people`);
  await expect(theirs.getByRole('heading', { name: 'This is not for you to see' })).toBeVisible();
  await expect(theirs.getByRole('banner')).toHaveCount(1);
  await theirs.goto(`${SITE}/record`);

  await page.getByRole('link', { name: NAME }).click();
  await page.getByRole('button', { name: `End the access of ${NAME}` }).click();
  await expect(page.getByText('Had access as aquarist')).toBeVisible();
  await theirs.reload();
  await expect(theirs).toHaveURL(/\/sign-in/);
  await theirs.close();
  await erase(page);
});

async function erase(page: Page): Promise<void> {
  await page.getByLabel('I have read this').check();
  await page.getByRole('button', { name: 'Erase name and address' }).click();
  await expect(page.getByRole('heading', { name: 'name erased' })).toBeVisible();
  await page.goto(`${SITE}/record`);
  await expect(page.getByText('Ended the access of name erased, who was aquarist')).toBeVisible();
  await expect(page.getByText(NAME)).toHaveCount(0);
  await page.getByRole('button', { name: 'Work out every seal again' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Whole: all' })).toBeVisible();
}
