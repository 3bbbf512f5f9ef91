import { expect as expectSoon, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 40_000 });

// How two kept reviews differ is tested where no worker has to have been quick enough to keep both.
test('the review of a system is read as a document, compared with those kept, and taken along', async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto('/');
  const judged = page.getByRole('row').filter({ hasText: /no warning|too late|some hours/ });
  await judged.first().getByRole('rowheader').getByRole('link').click();
  await page.getByRole('link', { name: 'The whole review as a document' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Review of/ })).toBeVisible();
  await expect(page.getByText(/^What to (fix|do) first:/).first()).toBeVisible();
  await page.getByRole('navigation', { name: 'Contents' }).getByRole('link', { name: 'Kept reviews' }).click();

  await page.goto(`${new URL(page.url()).pathname}/difference`);
  await expect(page.getByRole('heading', { level: 1, name: /^Two reviews of/ })).toBeVisible();

  await page.goBack();
  const file = page.waitForEvent('download', { timeout: 60_000 });
  await page.getByRole('link', { name: 'Download as PDF' }).click();
  expect((await file).suggestedFilename()).toMatch(/^review-[a-z0-9-]+-\d{4}-\d{2}-\d{2}\.pdf$/);
});
