import { join } from 'node:path';
import { expect as expectSoon, type Page, test } from '@playwright/test';
import { deliverCall } from './_support/push';
import { mailServer } from './_support/mail-server';
import { importFile, letIn } from './_support/people-of';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const SITE = '/sites/slipway';
const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

test.describe.configure({ mode: 'serial', timeout: 180_000 });

let aquarist: Page;
let lead: Page;
let manager: Page;
/** Address of the alarm's page. */
let alarm = '';

test.beforeAll(async ({ browser }) => {
  test.setTimeout(180_000);
  importFile(join(import.meta.dirname, '_support/slipway.yaml'));
  aquarist = await letIn(browser, 'aquarist', 'Sorrel Ebb', PHONE);
  lead = await letIn(browser, 'lead', 'Linden Skerry');
  manager = await letIn(browser, 'manager', 'Mallow Reach');
});

test.afterAll(async () => {
  for (const page of [aquarist, lead, manager]) await page?.context().close();
});

test('an aquarist walks the round on a phone and signs it', async () => {
  await aquarist.goto(`${SITE}/rounds`);
  await aquarist
    .getByRole('button', { name: /^(Begin|Walk) / })
    .first()
    .click();
  await expect(aquarist.getByText(/^Place 1 of/)).toBeVisible();
  for (;;) {
    await walkPlace(aquarist);
    const next = aquarist.getByRole('link', { name: 'Next place' });
    if ((await next.count()) === 0) break;
    const address = aquarist.url();
    await next.click();
    await aquarist.waitForURL((url) => url.href !== address);
  }
  await aquarist.getByRole('link', { name: 'All places, and sign' }).click();
  await expect(aquarist.getByText(/^Blank: 0\./)).toBeVisible();
  await aquarist.getByRole('button', { name: 'Sign this round as Sorrel Ebb' }).click();
  await expect(aquarist.getByText('Signed by Sorrel Ebb')).toBeVisible();
  expect(await aquarist.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
});

/** Enters every line of the place that is shown: what is read, then that the rest is as usual. */
async function walkPlace(page: Page): Promise<void> {
  const read = page.getByRole('textbox', { name: 'Read' });
  while ((await read.count()) > 0) {
    const before = await read.count();
    const form = page.locator('form').filter({ has: read.first() });
    await read.first().fill('25.1');
    await form.getByRole('button', { name: 'Save', exact: true }).click();
    const sure = form.getByRole('button', { name: 'Yes, save it so' });
    await expect(async () => {
      if (await sure.isVisible()) await sure.click();
      expect(await read.count()).toBeLessThan(before);
    }).toPass({ timeout: 20_000 });
  }
  const usual = page.getByRole('button', { name: /^I looked: the rest here is as usual/ });
  if ((await usual.count()) > 0) {
    await usual.click();
    await expect(usual).toHaveCount(0);
  }
  const rest = page.getByRole('button', { name: 'The rest here was not done, because…' });
  if ((await rest.count()) === 0) return;
  await rest.click();
  await page
    .getByRole('group', { name: 'The rest here was not done' })
    .getByRole('button', { name: 'No time' })
    .click();
  await expect(rest).toHaveCount(0);
}

test('readings that are sent raise an alarm, and the lead sees it come and acknowledges it', async ({ request }) => {
  const mail = await mailServer();
  await manager.goto(`${SITE}/readings/sources`);
  await manager.getByLabel('What sends them').fill('Gateway of the bay');
  await manager.getByRole('button', { name: 'Make a token' }).click();
  const token = (await manager.locator('code').filter({ hasText: /^hfr_/ }).textContent()) ?? '';

  await lead.goto(`${SITE}/alarms`);
  const warm = lead.getByRole('link', { name: 'Bay too warm' });
  await expect(lead.getByRole('heading', { level: 1, name: 'Alarms' })).toBeVisible();
  await expect(warm).toHaveCount(0);
  for (const pause of [0, 4000]) {
    await lead.waitForTimeout(pause);
    const answer = await request.post('/api/readings', {
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/senml+json' },
      data: JSON.stringify([{ n: 'bay-tank/t-bay', u: 'Cel', v: 29.2 + pause / 10_000, t: 0 }]),
    });
    expect(answer.status(), await answer.text()).toBe(200);
  }
  // Nobody reloads the page: the news of it comes by itself.
  await expect(warm.first()).toBeVisible();
  await expect.poll(() => mail.messages.map(({ to }) => to).sort()).toContain('lead@slipway.example');
  expect(mail.messages[0]?.text).toContain('Bay too warm');
  await mail.close();

  await warm.first().click();
  await lead.waitForURL(/\/alarms\/[^/]+$/);
  alarm = lead.url();
  await lead.getByLabel('Note (may be left empty)').fill('Going down to look');
  await lead.getByRole('button', { name: /^Acknowledge Bay/ }).click();
  await expect(lead.getByText(/Acknowledged by Linden Skerry/).first()).toBeVisible();
});

test('the manager sees who acknowledged it and when', async () => {
  await manager.goto(alarm);
  const life = manager.getByRole('region', { name: 'Its life' }).getByRole('listitem');
  const line = life.filter({ hasText: 'Linden Skerry acknowledged' });
  await expect(line).toContainText('Going down to look');
  await expect(line.getByRole('time')).toHaveText(/\d{2}:\d{2}/);
});

test('a call that comes by push is shown though no page of it is open, and leads to the page of the alarm', async () => {
  // Whatever a message says, only a page of this Holdfast is opened.
  const url = `https://elsewhere.example${new URL(alarm).pathname}`;
  const { shown, opened } = await deliverCall(lead, { title: 'Alarm: Bay too warm', body: '29.2 °C', url, tag: 'bay' });
  expect(shown).toMatchObject({ title: 'Alarm: Bay too warm', options: { body: '29.2 °C', requireInteraction: true } });
  expect(opened).toBe(alarm);
  await lead.goto(opened);
  await expect(lead.getByRole('heading', { level: 1, name: 'Bay too warm' })).toBeVisible();
});

test('the lead shelves it with an end and a reason; when its time is up it calls again', async () => {
  const mail = await mailServer();
  await lead.goto(`${SITE}/alarms/suppressed`);
  const form = lead.getByRole('region', { name: 'Shelve' });
  await form.getByLabel('Alarm').selectOption({ label: 'Bay tank: Bay too warm (never suppressed otherwise)' });
  await form.getByLabel(/^For how many hours \(1 hour at most\)/).fill('0.004');
  await form.getByLabel('Why').fill('Changing the probe');
  await form.getByRole('button', { name: 'Shelve it' }).click();
  const row = lead.getByRole('row').filter({ hasText: 'Shelved by Linden Skerry' });
  await expect(row).toContainText('Changing the probe');
  await expect(row.getByRole('link', { name: 'active' })).toBeVisible();
  // Nobody reloads the page: its end, fifteen seconds later, comes by itself.
  await expect(lead.getByText('Every alarm may call.')).toBeVisible({ timeout: 40_000 });
  await expect.poll(() => mail.messages.map(({ to }) => to)).toContain('lead@slipway.example');
  await mail.close();
  await lead.goto(alarm);
  await expect(lead.getByText('No longer shelved: its time was up').first()).toBeVisible();
  await lead.getByRole('button', { name: /^Acknowledge Bay/ }).click();
  await expect(lead.getByText(/Acknowledged by Linden Skerry/).first()).toBeVisible();
});

test('an incident is opened from the alarm, its first things are done, and the investigation is printed', async () => {
  await lead.goto(alarm);
  await lead.getByRole('link', { name: 'Open an incident' }).click();
  await lead.getByLabel('What happened, in a few words').fill('Bay tank ran warm');
  await lead.getByRole('button', { name: 'Open the incident' }).click();
  await expect(lead.getByRole('heading', { level: 1, name: 'Incident 1: Bay tank ran warm' })).toBeVisible();
  for (const step of ['People are safe', 'What went wrong is isolated', 'Air is on', 'Dosing is off']) {
    await lead.getByRole('button', { name: step, exact: true }).click();
    await expect(lead.getByRole('heading', { name: `${step}: done` })).toBeVisible();
  }
  const pages = lead.getByRole('navigation', { name: 'Pages of this incident' });
  await pages.getByRole('link', { name: 'Timeline' }).click();
  await expect(lead.getByText('Going down to look')).toBeVisible();
  await pages.getByRole('link', { name: 'Investigation' }).click();
  await expect(lead.getByRole('heading', { name: 'Losses' })).toBeVisible();
  await pages.getByRole('link', { name: 'Print the report' }).click();
  await expect(lead.getByText('Bay tank ran warm').first()).toBeVisible();
  await lead.emulateMedia({ media: 'print' });
  const printed = await lead.pdf();
  expect(printed.subarray(0, 5).toString()).toBe('%PDF-');
  await expect(lead.getByRole('navigation', { name: 'Pages of Slipway Rooms' })).toBeHidden();
});
