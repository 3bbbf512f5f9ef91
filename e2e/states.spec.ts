import { expect as expectSoon, test } from '@playwright/test';
import { demoPeople } from './_support/demo-people';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const PAGE = '/sites/lighthouse/states/lobby-tank';

// After first-run: the lighthouse was imported.
test('a water change is begun, shown on the overview, put off, and ended by saying what was seen', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(PAGE);
  await page.getByText('Water change, usually').click();
  await page.getByRole('button', { name: 'Begin water change' }).click();
  await expect(page.getByRole('heading', { name: 'In force' })).toBeVisible();

  await page.goto('/sites/lighthouse');
  await expect(page.getByRole('row').filter({ hasText: 'Water change until' })).toHaveCount(1);

  await page.goto(PAGE);
  await page.getByText('Put its end off').click();
  await page.getByLabel('From now it still lasts').fill('4');
  await page.getByRole('combobox', { name: /^in/ }).selectOption('hours');
  await page.getByLabel('Why').fill('the drain is slow');
  await page.getByRole('button', { name: 'Put the end off' }).click();
  await expect(page.getByRole('main').getByText(/Put off .*: the drain is slow/)).toBeVisible();

  await page.getByText('End it', { exact: true }).click();
  await expect(page.getByRole('group', { name: 'Everything runs again' })).toBeVisible();
  for (const box of await page.getByRole('checkbox', { name: /^I saw it/ }).all()) await box.check();
  await page.getByLabel('What you saw').fill('all runs, level at its mark');
  await page.getByRole('button', { name: 'End water change' }).click();
  await expect(page.getByRole('heading', { name: 'In force' })).toHaveCount(0);
  await expect(page.getByRole('cell', { name: 'all runs, level at its mark' })).toBeVisible();

  await page.goto('/sites/lighthouse/record');
  await expect(page.getByText(/Ended water change in .*Seen: all runs/).first()).toBeVisible();
});

test('a call for help that is being typed stays while the page brings itself up to date; another is over once a person says so', async ({
  page,
}) => {
  const other = await page.context().newPage();
  for (const one of [page, other]) await one.goto('/sites/lighthouse/alarms');
  await page.getByLabel('What is wrong, in a few words').fill('a smell by the pumps');
  await expect(page.getByText('This page brings itself up to date.')).toBeVisible();
  await other.getByLabel('What is wrong, in a few words').fill('Water on the stairs');
  await other.getByRole('button', { name: 'Call for help' }).click();
  const over = page.getByRole('region', { name: 'Past seven days' }).getByRole('link', { name: 'Water on the stairs' });
  await expect(page.getByRole('link', { name: 'Water on the stairs' })).toBeVisible();
  await expect(over).toHaveCount(0);
  await expect(page.getByLabel('What is wrong, in a few words')).toHaveValue('a smell by the pumps');
  await other.getByRole('link', { name: 'See how it stands' }).click();
  await other.getByLabel('What was done').fill('mopped up; a hose had slipped off');
  await other.getByRole('button', { name: 'It is right again' }).click();
  await expect(over).toBeVisible();
  await expect(page.getByLabel('What is wrong, in a few words')).toHaveValue('a smell by the pumps');
  await other.close();
});

test('a site is handed over by one and read back and taken by another, and the record holds both', async ({
  browser,
}) => {
  const signIn = demoPeople();
  const [giver, taker] = [await signIn(browser, 'lead'), await signIn(browser, 'aquarist')];
  // What stands may change between reading and pressing: then it is read again.
  await expect(async () => {
    await giver.goto('/sites/harbour/handover');
    await giver.getByText(/^Hand over (anew, )?as it stands now$/).click();
    await giver.getByRole('button', { name: 'I hand over' }).click();
    await expect(giver.getByText('and not taken yet')).toBeVisible({ timeout: 5000 });
  }).toPass({ timeout: 60_000 });
  await taker.goto('/sites/harbour/handover');
  await taker.getByRole('link', { name: 'read what was handed over' }).click();
  await taker.getByRole('button', { name: 'I have read it back and take it' }).click();
  await expect(taker.getByText(/Read back and taken/)).toBeVisible();
  await taker.goto('/sites/harbour/record');
  await expect(taker.getByText(/Read back and took the site over, digest [0-9a-f]{64}/).first()).toBeVisible();
  await giver.context().close();
  await taker.context().close();
});

test('an address for a calendar is shown once, opens the rota without signing in, and nothing once it is ended', async ({
  page,
  playwright,
}) => {
  await page.goto('/sites/lighthouse/rota');
  await page.getByRole('radio', { name: 'everybody’s' }).check();
  await page.getByRole('button', { name: 'Make an address' }).click();
  const address = (await page.getByText('/api/rota/').textContent()) ?? '';
  const stranger = await playwright.request.newContext();
  const answer = await stranger.get(address);
  expect(answer.headers()['content-type']).toBe('text/calendar; charset=utf-8');
  expect(answer.headers()['cache-control']).toBe('no-store');
  expect(await answer.text()).toContain('BEGIN:VEVENT');
  await page.reload();
  await page.getByRole('button', { name: 'End it' }).last().click();
  await expect.poll(async () => (await stranger.get(address)).status()).toBe(404);
  await stranger.dispose();
});
