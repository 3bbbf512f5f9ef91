import { execFileSync } from 'node:child_process';
import type { Browser, BrowserContextOptions, Page } from '@playwright/test';
import { dataFolder } from './run-folder';

const COMMAND = { encoding: 'utf8', env: { ...process.env, HOLDFAST_DATA: dataFolder() } } as const;

/** Takes in a facility file by the command line, as whoever looks after Holdfast does. */
export function importFile(path: string): void {
  execFileSync('npm', ['run', '-s', 'import', '--', path], COMMAND);
}

/** Lets somebody in with a role everywhere. @param domain of their address @returns their page, signed in, in a browser of their own */
export async function letIn(
  browser: Browser,
  role: string,
  name: string,
  view: BrowserContextOptions = {},
  domain = 'slipway.example',
): Promise<Page> {
  const email = `${role}@${domain}`;
  const said = execFileSync(
    'npm',
    ['run', '-s', 'account', '--', 'new', email, '--name', name, '--everywhere', role],
    COMMAND,
  );
  const token = /\/join\/(\S+)/.exec(said)?.[1];
  if (!token) throw new Error(`No link was said for ${email}`);
  const context = await browser.newContext({ ...view, storageState: { cookies: [], origins: [] } });
  const page = await context.newPage();
  await page.goto(`/join/${token}`);
  await page.getByLabel('Password').fill('four limpets under a red lantern');
  await page.getByRole('button', { name: 'Keep it and sign in' }).click();
  await page.waitForURL((url) => !url.pathname.startsWith('/join'), { waitUntil: 'commit', timeout: 60_000 });
  return page;
}
