import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, expect as expectSoon, type Page, test } from '@playwright/test';
import { importFile, letIn } from './_support/people-of';
import { runFolder } from './_support/run-folder';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const HOUR = 3_600_000;
const PHONE = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
  serviceWorkers: 'allow' as const,
};

test.describe.configure({ mode: 'serial', timeout: 120_000 });
test.use({ actionTimeout: 15_000 });

let phones: Page[] = [];

test.beforeAll(async ({ browser }) => {
  test.setTimeout(180_000);
  importFile(siteDueHoursAgo());
  phones = [
    await letIn(browser, 'aquarist', 'Sorrel Ebb', PHONE, 'pier.example'),
    await letIn(browser, 'lead', 'Linden Skerry', PHONE, 'pier.example'),
  ];
});

test.afterAll(async () => {
  for (const page of phones) await page.context().close();
});

/** The site with its round due half a day ago, whatever the time is now: it is late, and nothing of it is missed. */
function siteDueHoursAgo(): string {
  const due = new Date(Date.now() - 12 * HOUR);
  const day = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'][due.getUTCDay()];
  const text = readFileSync(join(import.meta.dirname, '_support/pier.yaml'), 'utf8');
  const path = join(runFolder(), 'pier.yaml');
  writeFileSync(path, text.replace('days: [mon], at: 00:00', `days: [${day}], at: ${due.toISOString().slice(11, 16)}`));
  return path;
}

/** Whether the browser lets nothing more be kept. */
async function isFull(): Promise<boolean> {
  const asked = indexedDB.open('room');
  await new Promise((resolve) => {
    asked.onupgradeneeded = () => asked.result.createObjectStore('tried', { autoIncrement: true });
    asked.onsuccess = resolve;
    asked.onerror = resolve;
  });
  if (asked.error) return true;
  const tried = asked.result.transaction('tried', 'readwrite');
  tried.objectStore('tried').add('x'.repeat(1000));
  const full = await new Promise<boolean>((resolve) => {
    tried.oncomplete = () => resolve(false);
    tried.onabort = () => resolve(tried.error?.name === 'QuotaExceededError');
  });
  asked.result.close();
  return full;
}

const network = async (context: BrowserContext, isOff: boolean) => await context.setOffline(isOff);
const notSent = (page: Page, count: number) =>
  page.getByText(count === 0 ? 'Everything is sent.' : `Not sent yet: ${count}`);

/** Opens the rounds once where there is a signal, until the page says that it opens without one. */
async function takeAlong(page: Page): Promise<void> {
  await page.goto('/sites/pier/rounds');
  await page.getByRole('link', { name: 'Walk without a signal' }).click();
  await expect(page.getByText('it opens without a signal')).toBeVisible();
}

/** A round of the day before, so that the site counts as walked since then and tells of what was due half a day ago. */
async function walkedYesterday(page: Page): Promise<void> {
  const status = await page.evaluate(async (before) => {
    const pack = await (await fetch('/api/rounds/pier')).json();
    const walk = { round: '019a0000-0000-7000-8000-000000000001', slot: 'all-day', due: null, name: 'The day before' };
    const line = pack.besides[0].places[0].checks[0];
    const id = '019a0000-0000-7000-8000-000000000002';
    const items = [{ id, kind: 'entry', madeAt: before, walk, line, typed: { notDone: 'No time' } }];
    const body = { account: pack.account.id, sentAt: new Date().toISOString(), items };
    return (await fetch('/api/rounds/pier', { method: 'POST', body: JSON.stringify(body) })).status;
  }, new Date(Date.now() - 20 * HOUR).toISOString());
  expect(status).toBe(200);
}

async function begin(page: Page): Promise<void> {
  await page
    .getByRole('link', { name: /^(Begin|Go on with) All day/ })
    .first()
    .click();
  await page.getByRole('link', { name: /Pier tank: Pier tank$/ }).click();
}

/** Enters a number on the first line that asks for one. */
async function enter(page: Page, number: string): Promise<void> {
  const form = page
    .locator('form')
    .filter({ has: page.getByRole('textbox', { name: 'Read' }) })
    .first();
  await form.getByRole('textbox', { name: 'Read' }).fill(number);
  await form.getByRole('button', { name: 'Save', exact: true }).click();
}

/** All that the site tells of its rounds. */
async function told(page: Page): Promise<string> {
  return await (await page.request.get('/api/rounds/pier')).text();
}

/** How many entries the site has of the round that was begun last, as another page of it counts them. */
async function entered(page: Page): Promise<string[]> {
  const answer = await page.request.get('/api/rounds/pier');
  const pack = (await answer.json()) as { walks: { round: string | null; entries: { id: string; at: string }[] }[] };
  return pack.walks.flatMap(({ entries }) => entries.map(({ id, at }) => `${at} ${id}`)).sort();
}

/** The signal is back: both send what waits, and again, which must change nothing. */
async function sendBoth(one: Page, two: Page): Promise<void> {
  for (const page of phones) await network(page.context(), false);
  for (const page of [two, one]) {
    await page.getByRole('button', { name: 'Try now' }).click();
    await expect(notSent(page, 0)).toBeVisible();
  }
  for (const page of [one, two]) await page.getByRole('button', { name: 'Try now' }).click();
}

/** Implausible is asked about, not refused; so is what lies beyond the limit of an alarm. */
async function enterImplausible(page: Page, number: string): Promise<void> {
  await enter(page, number);
  await expect(page.getByText('Not saved yet.')).toBeVisible();
  await page.getByRole('button', { name: 'Yes, save it so' }).click();
}

/** A photo goes with what was entered. */
async function addPhoto(page: Page): Promise<void> {
  const photo = join(import.meta.dirname, '_support/dial.png');
  await page.getByLabel('Add a photo').first().setInputFiles(photo);
}

/** What is half-typed on a line that is other than usual. */
const halfTyped = (page: Page) => page.getByRole('textbox', { name: 'What is other than usual, and what was done' });

async function typeHalf(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Not as usual…' }).first().click();
  await halfTyped(page).fill('Half a sent');
}

/** Help is called once there is a signal, and until then it is said that nobody is. */
async function callForHelp(page: Page): Promise<void> {
  await page.getByText('Something else is wrong here: call for help').click();
  await page.getByRole('textbox', { name: 'What is wrong, in a few words' }).fill('Smell of burning');
  await page.getByRole('button', { name: 'Call for help' }).click();
  await expect(page.getByText('Nobody has been called yet')).toBeVisible();
}

/** The call has gone out, and is an alarm like any other. */
async function wasCalled(page: Page): Promise<void> {
  await expect(page.getByText(/^Smell of burning: It is an alarm now/)).toBeVisible();
  const alarms = await page.context().newPage();
  await alarms.goto('/sites/pier/alarms');
  await expect(alarms.getByRole('link', { name: 'Smell of burning' })).toBeVisible();
  await alarms.close();
}

test('two walk one round for eight hours without a signal, one reloads twice, and each entry arrives once', async () => {
  const [one, two] = phones as [Page, Page];
  await walkedYesterday(one);
  for (const page of phones) await takeAlong(page);
  expect(await entered(one)).toEqual([]);
  for (const page of phones) await network(page.context(), true);
  const began = Date.now() - 8 * HOUR;
  await one.clock.install({ time: began });
  // Nothing of Holdfast answers any more, and what the browser kept opens instead.
  await one.goto('/sites/pier');
  await expect(one).toHaveURL(/\/walk/);
  await one.getByRole('link', { name: 'Pier Rooms' }).click();
  await begin(one);
  await enter(one, '25,1');
  await expect(notSent(one, 1)).toBeVisible();
  await addPhoto(one);
  await expect(notSent(one, 1).and(one.getByText('photos: 1'))).toBeVisible();

  await enterImplausible(one, '251');
  await expect(notSent(one, 2)).toBeVisible();

  // What is half-typed is there again after a reload, and gone once its line is entered.
  await typeHalf(one);
  await one.clock.fastForward(4 * HOUR);
  await one.reload();
  await expect(notSent(one, 2)).toBeVisible();
  await expect(halfTyped(one)).toHaveValue('Half a sent');
  await one.getByRole('button', { name: /^I looked: the rest here is as usual/ }).click();
  await one.clock.fastForward(4 * HOUR);
  await one.reload();
  await expect(one.getByText(/Not sent yet: \d+, photos: 1/)).toBeVisible();
  const waiting = Number(/Not sent yet: (\d+)/.exec((await one.locator('body').textContent()) ?? '')?.[1]);
  expect(waiting).toBeGreaterThan(2);
  await expect(halfTyped(one)).toHaveCount(0);
  await callForHelp(one);

  await begin(two);
  await enter(two, '25.3');
  await expect(notSent(two, 1)).toBeVisible();
  await sendBoth(one, two);
  const there = await entered(one);
  expect(there).toHaveLength(waiting + 1);
  expect(new Set(there).size).toBe(there.length);
  await wasCalled(one);
  // Each at the time it was made: the first as the eight hours began.
  expect(Math.abs(Date.parse(there[0]?.split(' ')[0] ?? '') - began)).toBeLessThan(HOUR);
  // Both of one line stand on the sheet, and the photo is with its entry.
  await one.getByText('Also entered: ').first().waitFor();
  expect(await one.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});

test('a telephone that has no room says so and keeps what was typed; nothing that was there before is lost', async () => {
  const [, two] = phones as [Page, Page];
  const session = await two.context().newCDPSession(two);
  await two.getByRole('link', { name: 'All places, and sign' }).click();
  await two.getByRole('link', { name: 'All rounds that are kept here' }).click();
  await network(two.context(), true);
  await two.getByRole('button', { name: 'Walk All day round now' }).click();
  await two.getByRole('link', { name: /Pier tank: Pier tank$/ }).click();
  const { origin } = new URL(two.url());
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  // A browser remembers for half a minute how much room there was.
  await expect.poll(async () => await two.evaluate(isFull), { timeout: 60_000, intervals: [2000] }).toBe(true);
  await enter(two, '24.9');
  await expect(two.getByText('has no room left')).toBeVisible();
  await expect(two.getByRole('textbox', { name: 'Read' }).first()).toHaveValue('24.9');
  await session.send('Storage.overrideQuotaForOrigin', { origin });
  await two
    .locator('form')
    .filter({ has: two.getByRole('textbox', { name: 'Read' }) })
    .first()
    .getByRole('button', { name: 'Save', exact: true })
    .click();
  await expect(notSent(two, 1)).toBeVisible();
});

test('whoever signs out leaves what was not sent, which nobody else is shown, and which arrives when they are back', async () => {
  const [one, two] = phones as [Page, Page];
  expect(await told(one)).not.toContain('24.9');
  // The session ends before anything is sent, which begins as soon as there is a signal.
  await two.context().clearCookies();
  await network(two.context(), false);
  await two.reload();
  await expect(two.getByText('Sign in to walk rounds')).toBeVisible();
  await expect(two.getByText('One entry of somebody waits on this telephone')).toBeVisible();
  await expect(two.getByText('24.9')).toHaveCount(0);
  await two.getByRole('link', { name: 'Sign in' }).click();
  await two.getByLabel('E-mail').fill('lead@pier.example');
  await two.getByLabel('Password').fill('four limpets under a red lantern');
  await two.getByRole('button', { name: 'Sign in', exact: true }).click();
  await two.getByRole('link', { name: 'Walk without a signal' }).click();
  await expect(notSent(two, 0)).toBeVisible();
  expect(await told(one)).toContain('24.9');
});
