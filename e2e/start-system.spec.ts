import { expect as expectSoon, test } from '@playwright/test';
import { demoPeople } from './_support/demo-people';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 40_000 });

// After first-run: the demo is loaded.
test('a few questions begin a system, whose review is shown before it is kept and stands on its page afterwards', async ({
  browser,
}) => {
  test.setTimeout(180_000);
  const page = await demoPeople()(browser, 'lead');
  await page.goto('/sites/quay-street');
  await page.getByRole('link', { name: 'Begin a system' }).click();
  const see = page.getByRole('button', { name: 'See what the review says' });
  await see.click();
  await expect(page.getByRole('alert').getByRole('link', { name: /What is kept, and where\?, Name/ })).toBeVisible();
  await page.getByLabel('Name', { exact: true }).fill('Window reef');
  await page.getByLabel('What is kept', { exact: true }).selectOption('reef');
  await page.getByLabel('Room', { exact: true }).selectOption({ index: 1 });
  await page.getByLabel('Salinity', { exact: true }).fill('35');
  const tanks = page.getByRole('group', { name: /Which tanks/ });
  await tanks.getByLabel('They are for').selectOption('display');
  await tanks.getByLabel('How many').fill('1');
  await tanks.getByLabel('Water in each').fill('240');
  await tanks.getByLabel('Depth of the water').fill('450');
  await tanks.getByLabel('Cover').selectOption('open');
  await page.getByRole('button', { name: 'Add: 4. What keeps the temperature?' }).click();
  const heat = page.getByRole('group', { name: /What keeps the temperature/ });
  await heat.getByLabel('Kept at').fill('25');
  await heat.getByLabel('Switched by').selectOption('hard-wired');
  await heat.getByRole('button', { name: 'Add: Heaters' }).click();
  await heat.getByLabel('How many').fill('1');
  await heat.getByLabel('Power of each').fill('500');
  await page.getByRole('button', { name: 'Add: Circulation pumps' }).click();
  await page.getByLabel('In each tank', { exact: true }).fill('1');
  await page.getByLabel('Each moves').fill('4000');
  await page.getByLabel('Skimmer', { exact: true }).selectOption('no');
  await page.getByRole('button', { name: /add a group of animals/i }).click();
  await page.getByLabel('Species or group').fill('Damsels');
  const animals = page.getByRole('group', { name: /^7/ });
  await animals.getByLabel('How many').fill('6');
  await animals.getByLabel('Mass of one').fill('12');
  await see.click();
  await expect(page.getByRole('row').filter({ hasText: 'heater welded on' }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Keep Window reef' }).click();
  await page.getByRole('link', { name: 'Go to its review' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Window reef' })).toBeVisible();
});
