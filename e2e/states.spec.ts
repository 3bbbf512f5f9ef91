import { expect as expectSoon, test } from '@playwright/test';

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
