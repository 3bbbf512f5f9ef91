import { beforeAll, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import { facility } from '../../_support/build-facility';
import { safeguard } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();

beforeAll(async () => {
  const { rows } = await query('SELECT current_database() AS name');
  await query(`ALTER DATABASE ${rows[0].name} SET timezone = 'America/New_York'`);
});

test('a database whose own zone is New York keeps days, instants and seals as they are', async () => {
  const tested = safeguard({
    key: 'battery',
    kind: 'standby-power',
    tests: [
      { on: '2026-03-08', result: 'worked' },
      { on: '2026-11-01', result: 'worked' },
    ],
  });
  const given = facility({ safeguards: [tested, ...facility().safeguards.slice(1)] });
  const before = new Date();
  await keep(given);
  const { facility: back, siteId } = await stored('harbour');
  expect(back).toEqual(given);
  expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  const { rows } = await query('SELECT min(at) AS first, max(at) AS last FROM record');
  expect(rows[0].first.getTime()).toBeGreaterThanOrEqual(before.getTime());
  expect(rows[0].last.getTime()).toBeLessThanOrEqual(Date.now());
});
