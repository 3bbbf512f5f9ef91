import { expect, test } from 'vitest';
import { findLastSighting, recordSighting } from '#data/worker-sightings';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
const at = (hour: number) => new Date(Date.UTC(2026, 2, 1, hour));

test('the last sighting is of whichever worker was seen last, and long gone workers are forgotten', async () => {
  expect(await findLastSighting()).toBeNull();
  await recordSighting('a', at(1), at(0));
  await recordSighting('b', at(3), at(0));
  await recordSighting('a', at(2), at(0));
  expect(await findLastSighting()).toEqual(at(3));
  await recordSighting('c', at(5), at(3));
  const { rows } = await query('SELECT worker FROM worker_sighting ORDER BY worker');
  expect(rows).toEqual([{ worker: 'b' }, { worker: 'c' }]);
});
