import { expect, type Page } from '@playwright/test';

/** From the table of systems to the first that needs something. */
export async function toWorstSystem(page: Page): Promise<void> {
  await page.goto('/');
  await page
    .getByRole('row')
    .filter({ hasText: /no warning|too late|some hours/ })
    .first()
    .getByRole('rowheader')
    .getByRole('link')
    .click();
  await expect(page.getByText(/^What to (fix|do) first:/).first()).toBeVisible();
}

/** Opens an incident of a system with what is done first, and goes to one of its pages. */
export async function toIncident(page: Page, part?: string): Promise<void> {
  await page.goto('/sites/lighthouse/incidents/new');
  await page.getByLabel('What happened, in a few words').fill('Return pump stopped');
  await page.getByLabel('System').selectOption({ index: 1 });
  await page.getByLabel(/at the earliest/).fill('2026-01-05T02:00');
  await page.getByRole('button', { name: 'Open the incident' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /^Incident \d+: Return pump stopped/ })).toBeVisible();
  await page.getByRole('button', { name: 'People are safe' }).click();
  await expect(page.getByRole('heading', { name: /^People are safe: done/ })).toBeVisible();
  if (part === undefined) return;
  await page.getByRole('link', { name: part, exact: true }).click();
  await expect(page.getByRole('link', { name: part, exact: true })).toHaveAttribute('aria-current', 'page');
}
