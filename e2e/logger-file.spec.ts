import { expect as expectSoon, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });
const READINGS = '/sites/mill-lane/readings';
const SENSOR = 'Koi vat: Koi vat temperature (temperature)';

/** Half-hourly on 5 March 2024, with a gap, and one value that the logger doubts. */
function logged(): Buffer {
  const rows = Array.from({ length: 48 }, (_, i) => {
    const clock = `${String(Math.floor(i / 2)).padStart(2, '0')}:${i % 2 === 0 ? '00' : '30'}`;
    const celsius = (12 + Math.sin(i / 8)).toFixed(2).replace('.', ',');
    return { i, text: `05.03.2024 ${clock};${celsius};${i === 20 ? 'check' : 'ok'}` };
  });
  const kept = rows.filter(({ i }) => i < 30 || i > 38).map(({ text }) => text);
  return Buffer.from(['Deck logger 7', 'Date;Temp (°C);Flag', ...kept].join('\r\n'));
}

// After first-run: the demonstration is loaded.
test('the file of a logger is looked at, said what it does not say, taken in, and seen on the chart', async ({
  page,
}) => {
  await page.goto(READINGS);
  await page.getByRole('link', { name: 'Take in the file of a logger' }).click();
  const file = { name: 'deck.csv', mimeType: 'text/csv', buffer: logged() };
  await page.getByLabel('File of a logger').setInputFiles(file);
  await expect(page.getByRole('heading', { name: 'deck.csv: 39 rows' })).toBeVisible();
  await expect(page.getByText('Say in which zone its clock ran')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take it in' })).toBeDisabled();

  await page.getByLabel('Its clock ran by').selectOption('+01:00');
  await page.getByLabel('Its dates are written').selectOption('dmy');
  await page.getByLabel('Sensor of column Temp (°C)').selectOption({ label: SENSOR });
  await page.getByRole('button', { name: 'See how it will be stored' }).click();
  await expect(page.getByRole('heading', { name: 'First and last rows as they will be stored' })).toBeVisible();
  // An hour ahead of UTC, where the clocks of the site are in winter.
  await expect(page.getByText('2024-03-04 23:00:00Z in UTC')).toBeVisible();
  await page.getByLabel('Name for files like this one').fill('Deck logger');
  await page.getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByText('39 readings stored, 0 there already')).toBeVisible();

  await page.getByLabel('File of a logger').setInputFiles(file);
  await expect(page.getByText('read as they are')).toBeVisible();
  await expect(page.getByText('This very file was taken in')).toBeVisible();
  await page.getByLabel('Name for files like this one').fill('Deck logger');
  await page.getByRole('button', { name: 'Take it in' }).click();
  await expect(page.getByText('0 readings stored, 39 there already')).toBeVisible();

  await page.goto(`${READINGS}/koi-vat/t-vat?span=day&until=2024-03-05`);
  await expect(page.getByRole('img', { name: 'Koi vat temperature from 2024-03-05 to 2024-03-05' })).toBeVisible();
  await expect(page.getByRole('cell', { name: 'check' })).toBeVisible();
  const csv = page.waitForEvent('download');
  await page.getByRole('link', { name: 'As a CSV file' }).click();
  expect((await csv).suggestedFilename()).toBe('koi-vat-t-vat-2024-03-05-2024-03-05.csv');
  await page.goto('/sites/mill-lane/record');
  await expect(page.getByText('Took in the file deck.csv').first()).toBeVisible();
});
