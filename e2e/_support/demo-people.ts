import { execFileSync } from 'node:child_process';
import type { Browser, Page } from '@playwright/test';
import { dataFolder } from './run-folder';

/** The people of the demonstration whom a story needs. */
export type DemoPerson = 'aquarist' | 'lead' | 'manager' | 'admin';

/**
 * Gives the people of the demonstration new passwords, as whoever looks after Holdfast does.
 *
 * @returns   signs one of them in, in a browser of their own
 */
export function demoPeople(): (browser: Browser, person: DemoPerson) => Promise<Page> {
  const env = { ...process.env, HOLDFAST_DATA: dataFolder() };
  const said = execFileSync('npm', ['run', '-s', 'account', '--', 'demo'], { encoding: 'utf8', env });
  return async (browser, person) => {
    const email = `${person}@demo.example`;
    const password = new RegExp(`${email.replaceAll('.', '\\.')}\\s+(\\S+)`).exec(said)?.[1];
    if (!password) throw new Error(`No password was said for ${person}`);
    const context = await browser.newContext({ storageState: { cookies: [], origins: [] } });
    const page = await context.newPage();
    await page.goto('/sign-in');
    await page.getByLabel('E-mail address').fill(email);
    await page.getByLabel('Password').fill(password);
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'));
    return page;
  };
}
