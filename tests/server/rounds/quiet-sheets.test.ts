import { expect, test } from 'vitest';
import { DAYS } from '#core/facility/site';
import { addDays } from '#core/time/add-days';
import { instantOf, wallClock } from '#core/time/zone';
import { now } from '#server/clock';
import { getSafeguard } from '#server/safeguards/get-safeguard';
import { getSheet } from '#server/rounds/sheets/get-sheet';
import { planDues } from '#server/rounds/sheets/plan-dues';
import { writeSheet } from '#server/rounds/sheets/write-sheet';
import { freshDatabase } from '../../_support/database';
import { siteWithRoundDue } from '../../_support/due-round';
import { letIn } from '../../_support/people';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const ZONE = 'Europe/London';
const QUIET = { days: [...DAYS], from: '20:00', to: '09:30', why: 'neighbours sleep' };
const SET = { key: 'set', name: 'Set starts', kind: 'standby-power' as const, testEveryDays: 30, tests: [] };

test('A sheet of loud tests is named when it is written, due at the end of the quiet, and its safeguard knows when', async () => {
  const { facility } = siteWithRoundDue();
  await keep({
    ...facility,
    site: { ...facility.site, generator: { safeguard: 'set' }, quietHours: [QUIET] },
    safeguards: [...facility.safeguards, SET],
  });
  const siteId = (await query('SELECT id FROM site')).rows[0].id;
  const lead = await letIn(query, siteId, 'harbour', 'Lee', 'lead');
  expect((await stored('harbour')).facility.site.quietHours).toEqual([QUIET]);

  const today = wallClock(ZONE, now().getTime()).date;
  const sheet = {
    key: 'set',
    name: 'Trial run',
    schedule: { rule: 'FREQ=DAILY', from: today, times: [{ at: '07:00' }] },
    lines: [{ kind: 'described' as const, key: '-/safeguard/set' }],
  };
  expect(await writeSheet(lead, { site: 'harbour', body: sheet, put: 'yes' })).toMatchObject({ ok: true });
  const page = await getSheet(lead, { site: 'harbour', sheet: 'set' });
  const first = instantOf(ZONE, today, '07:00');
  const moved = instantOf(ZONE, today, '09:30');
  expect(page).toMatchObject({
    ok: true,
    value: { quiet: { lines: ['-/safeguard/set'], at: first, in: { why: 'neighbours sleep' }, moved } },
  });

  await planDues(siteId, now());
  const { rows } = await query('SELECT due_at FROM sheet_due WHERE due_at > now() ORDER BY due_at LIMIT 3');
  const clocks = rows.map(({ due_at }) => wallClock(ZONE, due_at.getTime()).time);
  expect(clocks).toEqual(['09:30', '09:30', '09:30']);

  const safeguard = await getSafeguard(lead, { site: 'harbour', system: '-', safeguard: 'set' });
  const tonight = { from: instantOf(ZONE, today, '20:00'), to: instantOf(ZONE, addDays(today, 1), '09:30') };
  expect(safeguard).toMatchObject({
    ok: true,
    value: { quiet: expect.arrayContaining([{ ...tonight, why: QUIET.why }]) },
  });
});
