import { expect as expectSoon, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 40_000 });

// After plans: a plan of this system was changed, so that two of its reviews are kept.
test('the review of a system is read as a document, compared with the one before a plan was changed, and taken along', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto('/sites/quay-street/systems/puffers');
  await page.getByRole('link', { name: 'The whole review as a document' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Review of/ })).toBeVisible();
  await expect(page.getByText(/^What to (fix|do) first:/).first()).toBeVisible();
  await page.getByRole('navigation', { name: 'Contents' }).getByRole('link', { name: 'Kept reviews' }).click();

  await page.getByRole('link', { name: 'from the one before' }).first().click();
  await expect(page.getByRole('heading', { name: 'What the reviews say otherwise' })).toBeVisible();
  const changes = page.getByRole('table', { name: 'Changes that a review goes by, oldest first.' });
  await expect(changes).toContainText('Put version 2 of the plan of Small heater in force');

  await page.goBack();
  const file = page.waitForEvent('download', { timeout: 60_000 });
  await page.getByRole('link', { name: 'Download as PDF' }).click();
  expect((await file).suggestedFilename()).toMatch(/^review-quay-street-puffers-\d{4}-\d{2}-\d{2}\.pdf$/);
});
