import { expect as expectSoon, type Page, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 30_000 });
// After first-run: the small site of the lighthouse is there.
const DESCRIBED = '/sites/lighthouse/describe';

test.describe.configure({ mode: 'serial', timeout: 90_000 });

test('a figure is changed, and what that does to the review is seen before it is kept', async ({ page }) => {
  await page.goto(DESCRIBED);
  await page.getByRole('link', { name: 'Old heater' }).click();
  const power = page.getByRole('textbox', { name: /^Rated power/ });
  await expect(power).toHaveValue('600');
  await power.fill('much');
  await page.getByRole('button', { name: 'See what it changes' }).click();
  const summary = page.getByRole('alert').filter({ hasText: 'One thing is wrong' });
  await expect(summary).toBeFocused();
  await summary.getByRole('link', { name: /^Rated power: must be a number \(W\)/ }).press('Enter');
  await expect(power).toBeFocused();
  await expect(power).toHaveValue('much');
  await power.fill('60');
  await page.getByRole('button', { name: 'See what it changes' }).click();
  await expect(page.getByRole('region', { name: 'Lobby tank', exact: true })).toContainText('600 W → 60 W');
  const review = page.getByRole('region', { name: 'Review of Lobby tank' });
  await expect(review).toContainText('Old heater: heater welded on');
  await expect(review.getByRole('row', { name: /^As claimed/ })).toBeVisible();
  await keep(page, 'Keep the change', 'The change is kept');
  await page.getByRole('link', { name: 'To its page' }).click();
  await expect(power).toHaveValue('60');
  await expect(page.getByRole('row').filter({ hasText: '600 W → 60 W' }).first()).toContainText('Wren Tarrant');
});

test('a second heater is added with its plan, by keyboard alone', async ({ page }) => {
  await page.goto(`${DESCRIBED}/new/equipment/lobby-tank`);
  await page.getByRole('textbox', { name: 'Name' }).focus();
  await page.keyboard.type('New heater');
  await expect(page.getByRole('textbox', { name: 'Key' })).toHaveValue('new-heater');
  await choose(page, 'Type', 'heater');
  await choose(page, 'Tank', 'Lobby tank');
  await page.getByRole('textbox', { name: /^Rated power/ }).focus();
  await page.keyboard.type('50');
  await choose(page, 'Regulation', 'thermostat');
  await page.getByRole('checkbox', { name: 'Dial of the heater' }).focus();
  await page.keyboard.press('Space');
  await choose(page, 'Vote', 'single');
  await page.getByRole('textbox', { name: 'Low' }).focus();
  await page.keyboard.type('24');
  await page.getByRole('textbox', { name: 'High' }).focus();
  await page.keyboard.type('77 °F');
  await choose(page, 'Carried out by', 'hard-wired');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: 'See what it changes' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('New heater (equipment): new')).toBeVisible();
  await keep(page, 'Add it', 'It is added');
  await page.goto(DESCRIBED);
  await expect(page.getByRole('link', { name: 'New heater' })).toBeVisible();
});

test('an air pump is retired with a reason, and what others refer to is not', async ({ page }) => {
  await page.goto(`${DESCRIBED}/sensor/lobby-tank/dial/retire`);
  await page.getByRole('textbox', { name: 'Why' }).fill('It sticks');
  await page.getByRole('button', { name: 'See what it changes' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'wrong' })).toContainText('Old heater');
  await expect(page.getByRole('textbox', { name: 'Why' })).toHaveValue('It sticks');
  await page.goto(`${DESCRIBED}/equipment/lobby-tank/air`);
  await page.getByRole('link', { name: 'Retire it' }).click();
  await page.getByRole('textbox', { name: 'Why' }).fill('Its membrane is torn');
  await page.getByRole('button', { name: 'See what it changes' }).click();
  await expect(page.getByText('Air pump (equipment): no longer there')).toBeVisible();
  await keep(page, 'Retire it', 'It is retired');
  await page.goto('/sites/lighthouse/record');
  await expect(page.getByText(/Retired .*Air pump.*Its membrane is torn/).first()).toBeVisible();
});

/** Chooses in a field by its label, without a mouse. */
async function choose(page: Page, label: string, value: string): Promise<void> {
  await page
    .getByRole('combobox', { name: label })
    .first()
    .selectOption(value.includes(' ') ? { label: value } : { value });
}

async function keep(page: Page, button: string, said: string): Promise<void> {
  await page.getByRole('button', { name: button, exact: true }).click();
  await expect(page.getByRole('heading', { name: said })).toBeVisible();
}
