import type { Safeguard, SafeguardTest } from '#core/plans/safeguard';
import { beforeEach, describe, expect, test } from 'vitest';
import { heater } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { safeguard } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';
import { withEquipment } from '../../_support/with-part';

const { query } = freshDatabase();
const BATTERY = 'battery';

function withTests(tests: SafeguardTest[], off?: Safeguard['off']) {
  const others = facility().safeguards.filter(({ key }) => key !== BATTERY);
  return facility({ safeguards: [...others, safeguard({ key: BATTERY, kind: 'standby-power', tests, off })] });
}

async function ledger(): Promise<unknown[]> {
  const { rows } = await query(
    `SELECT to_char(t.tested_on, 'YYYY-MM-DD') AS on, t.result, w.result AS withdraws
       FROM safeguard_test t JOIN safeguard g ON g.id = t.safeguard_id LEFT JOIN safeguard_test w ON w.id = t.withdraws
      WHERE g.key = $1 ORDER BY t.id`,
    [BATTERY],
  );
  return rows;
}

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM safeguard_test`);
  await query('UPDATE safeguard SET tests = $1', [[]]);
  await keep(withTests([]));
});

describe('the ledger of the tests of a safeguard', () => {
  const march: SafeguardTest = { on: '2026-03-02', result: 'worked', by: 'Robin' };
  const june: SafeguardTest = { on: '2026-06-02', result: 'failed' };

  test('gains the tests that are new, and nothing for those it has', async () => {
    await keep(withTests([march]));
    await keep(withTests([march, june]));
    expect(await ledger()).toEqual([
      { on: march.on, result: 'worked', withdraws: null },
      { on: june.on, result: 'failed', withdraws: null },
    ]);
  });

  test('keeps a test that a file no longer has, and says that it was withdrawn', async () => {
    await keep(withTests([march, june]));
    await keep(withTests([june]));
    expect(await ledger()).toEqual([
      { on: march.on, result: 'worked', withdraws: null },
      { on: june.on, result: 'failed', withdraws: null },
      { on: march.on, result: 'withdrawn', withdraws: 'worked' },
    ]);
    expect((await stored('harbour')).facility).toEqual(withTests([june]));
  });

  test('tells two tests of one day apart, and keeps the order of the file', async () => {
    const twice = [june, march, march, { ...march, by: 'Sam' }];
    await keep(withTests(twice));
    expect((await stored('harbour')).facility).toEqual(withTests(twice));
    await keep(withTests([march, june]));
    expect((await stored('harbour')).facility).toEqual(withTests([march, june]));
  });

  test('does not let a test be withdrawn twice', async () => {
    await keep(withTests([march]));
    await keep(withTests([]));
    const again = query(`INSERT INTO safeguard_test SELECT site_id, gen_random_uuid(), safeguard_id, tested_on, result,
                           by_id, withdraws, recorded_at FROM safeguard_test WHERE result = 'withdrawn'`);
    await expect(again).rejects.toThrow('safeguard_test_withdrawn_once');
  });
});

describe('the plan of a piece of equipment', () => {
  async function versions(): Promise<unknown[]> {
    const { rows } = await query(
      `SELECT s.version, s.status FROM plan_status s JOIN equipment e ON e.id = s.equipment_id AND e.retired_at IS NULL
        WHERE e.key = 'heater-1' ORDER BY s.version, s.at, s.status`,
    );
    return rows;
  }
  const other = withEquipment(heater({ plan: { ...heater().plan, cutOuts: [] } }));

  test('becomes the next version when it changes; the one before is superseded and stays', async () => {
    expect(await versions()).toEqual([{ version: 1, status: 'in-force' }]);
    await keep(other);
    await keep(other);
    expect(await versions()).toEqual([
      { version: 1, status: 'in-force' },
      { version: 1, status: 'superseded' },
      { version: 2, status: 'in-force' },
    ]);
    const { rows } = await query(`SELECT p.version, v.body = p.body AS "isTheSame" FROM plan_in_force p
      JOIN equipment e ON e.id = p.equipment_id AND e.key = 'heater-1' JOIN plan_version v USING (equipment_id) ORDER BY v.version`);
    expect(rows).toEqual([
      { version: 2, isTheSame: false },
      { version: 2, isTheSame: true },
    ]);
  });

  test('that comes back as it once was is a version of its own', async () => {
    await keep(facility());
    expect((await versions()).at(-1)).toEqual({ version: 3, status: 'in-force' });
    expect((await stored('harbour')).facility).toEqual(facility());
  });
});
