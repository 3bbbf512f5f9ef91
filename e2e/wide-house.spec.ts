import { expect as expectSoon, test } from '@playwright/test';

/** A page may take its time on a machine that computes reviews beside it. */
const expect = expectSoon.configure({ timeout: 20_000 });

/** With those of other stories more than the hundred up to which all are shown. */
const COUNT = 110;
/** A gallery of small tanks, one like the other. Everything here is invented. */
const GALLERY = `
format: holdfast.facility/1
site: { key: gallery, name: Long Gallery, zone: Europe/London, altitudeM: 10 }
rooms:
  - { key: hall, name: Hall, temperatureC: 20, humidityPct: 60 }
circuits:
  - { key: wall, name: Wall socket, breakerA: 13, volts: 230, rcd: rcd-wall }
systems:
${Array.from(
  { length: COUNT },
  (_, n) => `
  - key: niche-${n}
    name: Niche ${n}
    kind: tropical-fresh
    room: hall
    salinity: 0
    tanks: [{ key: tank, name: Niche ${n}, role: display, volumeL: 60, surfaceM2: 0.2, cover: lidded }]
    stock: [{ key: shrimps, group: Shrimps, tank: tank, count: 10, eachG: 0.5 }]`,
).join('')}
`;

// The last story: nobody after it wants to wait for so many reviews.
test('of a wide house the worst are shown, and the others come when something is asked of the table', async ({
  page,
}) => {
  await page.goto('/import');
  await page.getByRole('textbox', { name: 'or paste it here' }).fill(GALLERY);
  await page.getByRole('button', { name: 'Check the file' }).click();
  await page.getByRole('button', { name: 'Import Long Gallery' }).click();
  await expect(page.getByRole('heading', { name: 'Long Gallery is imported' })).toBeVisible();

  await page.goto('/');
  const rows = page.getByRole('rowheader');
  await expect(rows).toHaveCount(30);
  const count = page.getByRole('search').getByRole('status');
  const all = Number(/^(\d+) of \1 systems$/.exec((await count.textContent()) ?? '')?.[1]);
  expect(all).toBeGreaterThan(COUNT);

  // The letters stay in the field while the others are on their way.
  await page.getByRole('searchbox', { name: 'Find' }).pressSequentially('niche 107', { delay: 40 });
  await expect(rows).toHaveText([/Niche 107/]);
  await expect(count).toHaveText(`1 of ${all} systems`);
  await expect(page).toHaveURL(/find=niche\+107/);
  await page.reload();
  await expect(rows).toHaveText([/Niche 107/]);

  await page.goto('/');
  await page.getByRole('combobox', { name: 'Site' }).selectOption('Long Gallery');
  await expect(rows).toHaveCount(30);
  await expect(count).toHaveText(`${COUNT} of ${all} systems`);

  await page.goto('/');
  await page.getByRole('button', { name: `Show the other ${all - 30} systems` }).click();
  await expect(rows).toHaveCount(all);
  await page.getByRole('columnheader', { name: 'System' }).getByRole('button').click();
  await expect(page).toHaveURL(/sort=name/);
  const names = await rows.getByRole('link').allTextContents();
  expect(names).toHaveLength(all);
  expect(names).toEqual([...names].sort(new Intl.Collator('en', { numeric: true }).compare));
});
