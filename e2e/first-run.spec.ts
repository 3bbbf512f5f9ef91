import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect as expectSoon, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
/** Reviews of the demo's first systems, on a machine that has other work. */
const REVIEWED = { timeout: 240_000 };
const LIGHTHOUSE = readFileSync(join(import.meta.dirname, '_support/lighthouse.yaml'), 'utf8');
const GRAVE = /no warning|too late|some hours/;

test.describe.configure({ mode: 'serial', timeout: 300_000 });

test('a newcomer is told what Holdfast is, loads the demo, and sees every system with its review under way', async ({
  page,
}) => {
  await page.goto('/');
  await expect(page.getByText('which single failure would lose animals')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Import a facility file' })).toBeVisible();
  await page.getByRole('button', { name: 'Load the demo' }).click();
  const people = page.getByRole('table', { name: /Who may sign in/ });
  await expect(people.getByRole('row').filter({ hasText: 'aquarist@demo.example' })).toBeVisible({ timeout: 60_000 });
  await page.getByRole('link', { name: 'See the systems' }).click();
  await expect(page.getByText('Demonstration', { exact: true })).toBeVisible();
  await expect(page.getByRole('row')).toHaveCount(25, { timeout: 60_000 });
  await expect(page.getByRole('status').filter({ hasText: 'Reviews under way' })).toContainText('of 24 done');
});

test('the table fills by itself as reviews are done, worst first', async ({ page }) => {
  await page.goto('/');
  const first = page.getByRole('row').nth(1);
  await expect(first).toContainText(GRAVE, REVIEWED);
  await expect(page.getByRole('columnheader', { name: 'Worst case' })).toHaveAttribute('aria-sort', 'ascending');
  await expect(page.getByText(/systems? reviewed/)).toBeVisible();
});

test('order and filter stand in the address, so that a link shows what its sender saw', async ({ page }) => {
  await page.goto('/');
  await page.getByRole('searchbox', { name: 'Find' }).fill('great');
  await expect(page).toHaveURL(/find=great/);
  const names = page.getByRole('rowheader').getByRole('link');
  await expect(names).toHaveText(['Great reef']);
  await page.getByRole('searchbox', { name: 'Find' }).fill('nothing is called this');
  await expect(page.getByText('No system answers to this filter.')).toBeVisible();
  await page.getByRole('searchbox', { name: 'Find' }).clear();
  await page.getByRole('combobox', { name: 'Kind' }).selectOption('reef');
  await expect(names).toHaveCount(3);
  const byName = page.getByRole('columnheader', { name: 'System' }).getByRole('button');
  await byName.focus();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/sort=name/);
  await expect(page).toHaveURL(/kind=reef/);
  const sent = page.url();
  await page.goto('/how');
  await page.goto(sent);
  await expect(names).toHaveText(['Great reef', 'Seagrass lagoon', 'Show reef']);
  await expect(page.getByRole('columnheader', { name: 'System' })).toHaveAttribute('aria-sort', 'ascending');
});

test('a system says what would lose its animals, what to do first, and leads to the fault case', async ({ page }) => {
  await page.goto('/');
  const worst = page.getByRole('row').filter({ hasText: GRAVE }).first();
  await expect(worst).toBeVisible(REVIEWED);
  await worst.getByRole('rowheader').getByRole('link').click();
  await expect(page.getByText(/^What to (fix|do) first:/).first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What to do', exact: true })).toBeVisible();
  await expect(page.getByRole('img', { name: /tanks, flow and equipment/ })).toBeVisible();
  await page.getByText('The drawing as a table').click();
  await expect(page.getByRole('table', { name: 'Equipment, where it stands and what feeds it' })).toBeVisible();
  await page.getByRole('main').getByRole('link', { name: /:/ }).first().click();
  await expect(page).toHaveURL(/\/cases\//);
  await expect(page.getByRole('img', { name: /^Course of/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /^Cover chart/ }).first()).toBeVisible();
  await expect(page.getByRole('row').filter({ hasText: 'Last chance' }).first()).toBeVisible();
  await page.getByText('The plot as a table').click();
  await expect(page.getByRole('table', { name: /when nobody comes/ })).toBeVisible();
});

test('a broken file shows every error with its line, and its text stays', async ({ page }) => {
  const broken = LIGHTHOUSE.replace('volumeL: 180', 'volumeL: much').replace('room: lobby', 'room: lobbby');
  await page.goto('/import');
  await page.getByRole('textbox', { name: 'or paste it here' }).fill(broken);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('heading', { name: '2 things are wrong; nothing was changed.' })).toBeVisible();
  const faults = page.getByRole('row');
  await expect(faults.filter({ hasText: 'systems[0].room' })).toContainText(`${lineOf(broken, 'lobbby')}:`);
  await expect(faults.filter({ hasText: 'systems[0].tanks[0].volumeL' })).toContainText(`${lineOf(broken, 'much')}:`);
  await expect(page.getByRole('textbox', { name: 'or paste it here' })).toHaveValue(broken);
  await expect(page.getByRole('button', { name: /^Import/ })).toHaveCount(0);
});

test('a good file says what it would add, is imported when asked, and stands in the table with its review', async ({
  page,
}) => {
  await page.goto('/import');
  await page.getByLabel('Choose a facility file').setInputFiles(join(import.meta.dirname, '_support/lighthouse.yaml'));
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByText('Lighthouse Rooms is new here: 1 system would be added')).toBeVisible();
  await page.getByRole('button', { name: 'Import Lighthouse Rooms' }).click();
  await expect(page.getByRole('heading', { name: 'Lighthouse Rooms is imported' })).toBeVisible();
  await page.getByRole('link', { name: 'See the systems' }).click();
  await page.getByRole('searchbox', { name: 'Find' }).fill('lobby tank');
  await expect(page.getByRole('row').nth(1)).toContainText(GRAVE, REVIEWED);
});

test('the same file again changes nothing, and a changed one says what is different', async ({ page }) => {
  await page.goto('/import');
  const text = page.getByRole('textbox', { name: 'or paste it here' });
  await text.fill(LIGHTHOUSE);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByText('Importing it changes nothing.')).toBeVisible();
  await text.fill(LIGHTHOUSE.replace('ratedW: 600', 'ratedW: 150'));
  await page.getByRole('button', { name: 'Check the file' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'Old heater' })).toContainText('600 W → 150 W');
});

test('a heater of another size is tried in the browser, and the answer changes', async ({ page }) => {
  await page.goto('/sites/lighthouse/systems/lobby-tank/cases/heater-on%3Aheater%3Anormal');
  const answer = page.getByRole('status');
  const size = page.getByRole('textbox', { name: 'Rated power, W' });
  await expect(size).toHaveValue('600');
  await size.fill('60');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(answer).toContainText('With 60 W, as claimed: holds', { timeout: 30_000 });
  await size.fill('600');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(answer).toContainText(/With 600 W, as claimed: (no warning|too late|some hours)/, { timeout: 30_000 });
});

test('units and light are as a person chooses, on every page and after coming back', async ({ page }) => {
  await page.goto('/sites/lighthouse/systems/lobby-tank');
  await expect(page.getByRole('img', { name: /^Lobby tank: tanks/ })).toContainText('180 L');
  await page.getByText('Units and light').click();
  await page.getByRole('button', { name: '°F, US gallons, inches' }).click();
  await expect(page.getByRole('img', { name: /^Lobby tank: tanks/ })).toContainText('48 US gal');
  // What a source is quoted with stays as it was said; the figures do not.
  const lists = page.getByRole('list', { name: 'Figures', includeHidden: true });
  const figures = (await lists.locator('b').allTextContents()).join(' ');
  expect(figures).toMatch(/\d\s°F/);
  expect(figures).not.toMatch(/°C|\d\s(L|mm)\b/);
  await page.getByRole('button', { name: 'dark' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-light', 'dark');
  await page.goto('/');
  await expect(page.locator('html')).toHaveAttribute('data-light', 'dark');
});

/** The line of a text on which a word stands, counted from 1. */
function lineOf(text: string, word: string): number {
  return text.slice(0, text.indexOf(word)).split('\n').length;
}
