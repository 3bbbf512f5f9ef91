import { beforeAll, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import { facility, person } from '../../_support/build-facility';
import { safeguard } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();

/** Quill works, looked at tests, and took a safeguard out of service. */
const given = facility({
  people: [person({ name: 'Quill' }), person({ key: 'sam', name: 'Sam' })],
  safeguards: [
    safeguard({ key: 'outside-watch', kind: 'alarm' }),
    safeguard({
      key: 'battery',
      kind: 'standby-power',
      tests: [{ on: '2026-03-02', result: 'worked', by: 'Quill' }],
      off: { by: 'Quill', why: 'New cells are on their way', since: '2026-04-01', until: '2026-05-01' },
    }),
  ],
});

beforeAll(async () => {
  await keep(given);
});

describe('the name of a person', () => {
  test('stands in one table and nowhere else', async () => {
    const { rows } = await query(`SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
      WHERE n.nspname = 'public' AND c.relkind = 'r' ORDER BY 1`);
    expect(rows.length).toBeGreaterThan(20);
    const holding: string[] = [];
    for (const { name } of rows) {
      const { rowCount } = await query(`SELECT FROM "${name}" t WHERE t::text LIKE '%Quill%'`);
      if (rowCount) holding.push(name);
    }
    expect(holding).toEqual(['person_name']);
  });

  test('is one for all duties, so that erasing it once erases it everywhere and breaks nothing', async () => {
    const { rowCount } = await query(`UPDATE person_name SET name = NULL WHERE name = 'Quill'`);
    expect(rowCount).toBe(1);
    const { facility: left, siteId } = await stored('harbour');
    expect(JSON.stringify(left)).not.toContain('Quill');
    expect(left.people[0]).toMatchObject({ key: 'robin', name: 'name erased', travelMin: { value: 25 } });
    expect(left.safeguards.find(({ key }) => key === 'battery')).toMatchObject({
      tests: [{ on: '2026-03-02', result: 'worked', by: 'name erased' }],
      off: { by: 'name erased', why: 'New cells are on their way' },
    });
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
  });
});
