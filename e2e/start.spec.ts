import { expect, test } from '@playwright/test';

test('the started product shows its name and says that every part of it is up', async ({ page, request }) => {
  await page.goto('/');
  await expect(page).toHaveTitle(/Holdfast/);
  await expect(async () => {
    const answer = await request.get('/api/health');
    expect(answer.status()).toBe(200);
    expect(await answer.json()).toMatchObject({ web: 'up', database: 'up', worker: 'up' });
  }).toPass({ timeout: 20_000 });
});
