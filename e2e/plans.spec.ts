import { expect as expectSoon, type Page, test } from '@playwright/test';
import { demoPeople } from './_support/demo-people';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 40_000 });
// After first-run: the demo is loaded.
const PLAN = '/sites/quay-street/plans/puffers/heater';

test('a plan is written by one person and put into force by another, and both plans stay to be looked up', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const signIn = demoPeople();
  const lead = await signIn(browser, 'lead');
  await writeDraft(lead);
  await expect(lead.getByRole('heading', { name: 'Version 2, draft' })).toBeVisible();
  await expect(lead.getByRole('heading', { name: 'What the review would say with it' })).toBeVisible();
  await lead.getByRole('button', { name: 'Submit' }).click();
  await expect(lead.getByText('It waits for somebody else')).toBeVisible();
  await expect(lead.getByRole('button', { name: 'Put into force' })).toHaveCount(0);

  const manager = await signIn(browser, 'manager');
  await manager.goto('/sites/quay-street/plans');
  await manager.getByRole('link', { name: /Small heater, version 2/ }).click();
  await expect(manager.getByRole('heading', { name: 'What the review would say with it' })).toBeVisible();
  await manager.getByRole('button', { name: 'Put into force' }).click();
  await expect(manager.getByText('Version 2, since')).toBeVisible();

  // What both saw of it stays: the difference of the two, and what was in force when.
  await lead.goto(PLAN);
  await lead.getByRole('combobox', { name: 'From version' }).selectOption('1');
  await lead.getByRole('combobox', { name: 'to version' }).selectOption('2');
  await lead.getByRole('button', { name: 'Compare' }).click();
  const difference = lead.getByRole('table', { name: 'From version 1 to version 2.' });
  await expect(difference.getByRole('row').filter({ hasText: 'comes' })).toContainText('24.4 °C');
  await expect(difference.getByRole('row').filter({ hasText: 'goes' })).toContainText('24.2 °C');
  await lead.goto('/sites/quay-street/plans/puffers');
  await expect(lead.getByRole('row').filter({ hasText: 'Small heater' })).toContainText('24.4 °C');
  await lead.goto('/sites/quay-street/plans/puffers?day=2020-01-01&time=12:00');
  await expect(lead.getByText('Nothing was in force then.')).toBeVisible();
});

/** Another lower limit for the thermostat of the heater. */
async function writeDraft(page: Page): Promise<void> {
  await page.goto(`${PLAN}/write`);
  await page.getByLabel('Low', { exact: true }).fill('26');
  await page.getByLabel('Why it is written').fill('a narrower band');
  await page.getByRole('button', { name: 'Keep as a draft' }).click();
  await expect(page.getByRole('alert').getByRole('link', { name: /Low/ })).toBeVisible();
  await page.getByLabel('Low', { exact: true }).fill('24.4');
  await page.getByLabel('Why it is written').fill('a narrower band');
  await page.getByRole('button', { name: 'Keep as a draft' }).click();
  await page.getByRole('link', { name: /See what the review says/ }).click();
}
