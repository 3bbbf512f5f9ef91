import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { type CDPSession, expect as expectSoon, type Page, test } from '@playwright/test';
import { mailServer } from './_support/mail-server';
import { dataFolder } from './_support/run-folder';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const EMAIL = 'merrow@holdfast.example';
const NAME = 'Merrow Sallow';
let password = 'nine crabs in the old bucket';

test.use({ storageState: { cookies: [], origins: [] } });
test.describe.configure({ mode: 'serial' });

test('somebody joins by a link that a command printed, signs out, and signs in again to where they wanted', async ({
  page,
}) => {
  await page.goto(account('new', EMAIL, '--name', NAME, '--everywhere', 'viewer'));
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Keep it and sign in' }).click();
  await expect(page.getByRole('link', { name: NAME })).toBeVisible();
  await page.getByRole('button', { name: 'Sign out' }).click();
  await expect(page).toHaveURL(/\/sign-in$/);
  await page.goto('/how?from=there');
  await expect(page).toHaveURL(/\/sign-in\?to=/);
  await fillIn(page, 'not my password at all');
  await expect(page.getByRole('status').filter({ hasText: 'does not let you in' })).toBeVisible();
  await fillIn(page, password);
  await expect(page).toHaveURL(/\/how\?from=there$/);
});

test('a passkey is added, and signs in without a password', async ({ page }) => {
  await page.goto('/sign-in?to=/account');
  await fillIn(page, password);
  const keys = await virtualKeys(page);
  await page.getByLabel('Name of the new passkey').fill('blue key');
  await page.getByRole('button', { name: 'Add a passkey' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'blue key' })).toContainText('never');
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click();
  await expect(page.getByRole('link', { name: NAME })).toBeVisible();
  await page.goto('/account');
  await expect(page.getByRole('row').filter({ hasText: 'this one' })).toContainText('passkey');
  await page.getByRole('button', { name: 'Remove blue key' }).click();
  await expect(page.getByText('You have none yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'does not let you in' })).toBeVisible();
  await keys.detach();
});

test('a session that is ended in another browser is ended', async ({ page, browser }) => {
  await page.goto('/sign-in');
  await fillIn(page, password);
  await expect(page.getByRole('link', { name: NAME })).toBeVisible();
  const other = await browser.newPage({ storageState: { cookies: [], origins: [] } });
  await other.goto('/sign-in?to=/account');
  await fillIn(other, password);
  await other.getByRole('button', { name: 'Sign out everywhere else' }).click();
  await expect(other.getByRole('button', { name: 'Sign out everywhere else' })).toBeHidden();
  await page.getByRole('link', { name: 'Import' }).first().click();
  await page.reload();
  await expect(page).toHaveURL(/\/sign-in/);
  await other.close();
});

test('a new password comes by mail, whoever had the old one is out, and the link works once', async ({
  page,
  browser,
}) => {
  const mail = await mailServer();
  const former = await browser.newPage({ storageState: { cookies: [], origins: [] } });
  await former.goto('/sign-in');
  await fillIn(former, password);
  await expect(former.getByRole('link', { name: NAME })).toBeVisible();
  await page.goto('/sign-in');
  await page.getByRole('link', { name: 'I do not know my password' }).click();
  // Both pages have a field of this name: the one before must be gone.
  await expect(page.getByRole('heading', { name: 'A new password' })).toBeVisible();
  for (const email of ['nobody@holdfast.example', EMAIL]) {
    await page.getByLabel('E-mail address').fill(email);
    await page.getByRole('button', { name: 'Send the link' }).click();
    await expect(page.getByText('If this address has an account, the link is on its way.')).toBeVisible();
    await page.reload();
  }
  await expect.poll(() => mail.messages.length).toBe(1);
  const { to, text } = mail.messages[0] ?? { to: '', text: '' };
  expect(to).toBe(EMAIL);
  const link = /http:\S+\/reset\/\S+/.exec(text)?.[0] ?? '';
  password = 'ten herons on the long jetty';
  await page.goto(link);
  await page.getByLabel('Password').fill(password);
  await page.getByRole('button', { name: 'Keep it and sign in' }).click();
  await expect(page.getByRole('link', { name: NAME })).toBeVisible();
  await page.goto(link);
  await expect(page.getByRole('heading', { name: 'This link leads nowhere any more' })).toBeVisible();
  await former.reload();
  await expect(former).toHaveURL(/\/sign-in/);
  await former.close();
  await mail.close();
});

async function fillIn(page: Page, typed: string): Promise<void> {
  await page.getByLabel('E-mail address').fill(EMAIL);
  await page.getByLabel('Password').fill(typed);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

/** A command of the machine itself. @returns the address that it printed */
function account(...words: string[]): string {
  const printed = execFileSync('npm', ['run', '-s', 'account', '--', ...words], {
    cwd: join(import.meta.dirname, '..'),
    env: { ...process.env, HOLDFAST_DATA: dataFolder() },
    encoding: 'utf8',
  });
  return /http:\S+/.exec(printed)?.[0] ?? '';
}

/** A key of the browser's own that says yes at once (Web Authentication Level 3, 11: a virtual authenticator). */
async function virtualKeys(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send('WebAuthn.enable');
  await session.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  return session;
}
