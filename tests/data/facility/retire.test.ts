import { beforeEach, describe, expect, test } from 'vitest';
import { heater } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { keep, stored } from '../../_support/stored';
import { withEquipment, withSystem } from '../../_support/with-part';

const { query } = freshDatabase();

const without = (key: string) => withSystem({ equipment: system().equipment.filter((one) => one.key !== key) });

async function rowsOf(table: string, key: string): Promise<{ id: string; isLiving: boolean }[]> {
  const { rows } = await query(
    `SELECT id, retired_at IS NULL AS "isLiving" FROM ${table} WHERE key = $1 ORDER BY retired_at NULLS LAST`,
    [key],
  );
  return rows;
}

beforeEach(async () => {
  await keep(facility());
});

describe('what a file no longer has', () => {
  test('is retired and not deleted, and everything else keeps its id', async () => {
    const [skimmer] = await rowsOf('equipment', 'skimmer');
    const [heater] = await rowsOf('equipment', 'heater-1');
    await keep(without('skimmer'));
    expect(await rowsOf('equipment', 'skimmer')).toContainEqual({ id: skimmer?.id, isLiving: false });
    expect(await rowsOf('equipment', 'heater-1')).toEqual([heater]);
    expect((await stored('harbour')).facility).toEqual(without('skimmer'));
  });

  test('leaves its key free: what comes under it later is another thing, with a history of its own', async () => {
    const [before] = await rowsOf('equipment', 'skimmer');
    await keep(without('skimmer'));
    await keep(facility());
    const rows = await rowsOf('equipment', 'skimmer');
    expect(rows.filter(({ isLiving }) => isLiving)).toHaveLength(1);
    expect(rows.find(({ isLiving }) => isLiving)?.id).not.toBe(before?.id);
    expect((await stored('harbour')).facility).toEqual(facility());
  });

  test('takes with it what belongs to a system that is gone', async () => {
    await keep(facility({ systems: [system({ key: 'reef-2', name: 'Reef 2' })] }));
    const { rows } = await query(
      `SELECT s.key, count(*)::int AS tanks FROM system s JOIN tank t ON t.system_id = s.id
        WHERE (s.retired_at IS NULL) = (t.retired_at IS NULL) GROUP BY s.key ORDER BY s.key`,
    );
    expect(rows.map(({ key }) => key)).toEqual(['reef-1', 'reef-2']);
    const { rows: left } = await query(
      `SELECT t.key FROM tank t JOIN system s ON s.id = t.system_id WHERE t.retired_at IS NULL AND s.retired_at IS NOT NULL`,
    );
    expect(left).toEqual([]);
  });
});

describe('a thing whose key stays', () => {
  test('keeps its id when everything said of it changes, and moves in its list', async () => {
    const [before] = await rowsOf('equipment', 'heater-1');
    const changed = withEquipment(heater({ name: 'Old heater', ratedW: 300, circuit: 'air' }));
    const turned = withSystem({ equipment: changed.systems.flatMap(({ equipment }) => equipment).reverse() });
    await keep(turned);
    expect(await rowsOf('equipment', 'heater-1')).toContainEqual(before);
    expect((await stored('harbour')).facility).toEqual(turned);
  });

  test('cannot be there twice, whoever writes it', async () => {
    const { rows } = await query(`SELECT * FROM equipment WHERE key = 'heater-1' AND retired_at IS NULL`);
    const again = { ...rows[0], id: '019a0000-0000-7000-8000-000000000009' };
    const insert = query('INSERT INTO equipment SELECT * FROM jsonb_populate_record(NULL::equipment, $1)', [again]);
    await expect(insert).rejects.toThrow('equipment_living_key');
  });
});
