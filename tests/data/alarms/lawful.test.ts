import { beforeAll, describe, expect, test } from 'vitest';
import { ALARM_CHANGES, ALARM_STATES, stateAfter } from '#core/alarms/life/machine';
import { newId } from '#data/new-id';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { pool } from '#data/pool';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let siteId = '';
/** An alarm of a silent gateway. */
let alarm = { id: '', systemId: '' };

beforeAll(async () => {
  await anew();
  ({ siteId } = await stored('harbour'));
  const { rows } = await query('SELECT id FROM system WHERE site_id = $1 LIMIT 1', [siteId]);
  alarm = { id: newId(), systemId: rows[0].id };
  await define(alarm.id, alarm.systemId, 'plain', { kind: 'silent', gateway: 'hall' });
});

async function define(id: string, systemId: string, key: string, on: Record<string, unknown>): Promise<void> {
  await query(
    `INSERT INTO alarm_definition (site_id, id, system_id, key, ordinal, name, detail) VALUES ($1, $2, $3, $4, 99, $4, $5)`,
    [siteId, id, systemId, key, JSON.stringify({ on })],
  );
}

/** An occurrence that nothing has been said of. */
async function occurrence(latched = false): Promise<string> {
  const id = newId();
  await query(
    `INSERT INTO alarm_occurrence (site_id, id, alarm_id, system_id, began_at, raised_at, definition)
     VALUES ($1, $2, $3, $4, now(), now(), $5)`,
    [siteId, id, alarm.id, alarm.systemId, JSON.stringify({ latched })],
  );
  return id;
}

/** Adds an event with the rights of the processes. */
async function say(id: string, kind: string): Promise<string> {
  const { rows } = await pool().query(
    `INSERT INTO alarm_event (site_id, id, occurrence_id, kind, at, detail) VALUES ($1, $2, $3, $4, now(), '{}') RETURNING state`,
    [siteId, newId(), id, kind],
  );
  return rows[0].state;
}

async function lived(latched: boolean, ...kinds: string[]): Promise<string> {
  const id = await occurrence(latched);
  for (const kind of kinds) await say(id, kind);
  return id;
}

describe('the database', () => {
  test('has the same table of states as the core', async () => {
    const states = ['none', ...ALARM_STATES];
    const cases = states.flatMap((from) =>
      ALARM_CHANGES.flatMap((kind) => [true, false].map((is) => ({ from, kind, is }))),
    );
    const { rows } = await query(
      `SELECT alarm_state_after(c->>'from', c->>'kind', (c->>'is')::boolean) AS to
         FROM jsonb_array_elements($1::jsonb) WITH ORDINALITY AS t(c, n) ORDER BY n`,
      [JSON.stringify(cases)],
    );
    const core = cases.map(({ from, kind, is }) =>
      stateAfter(from === 'none' ? null : (from as (typeof ALARM_STATES)[number]), kind, is),
    );
    expect(rows.map(({ to }) => to)).toEqual(core);
  });

  test.each<[string, boolean, string[], string]>([
    ['acknowledges nothing that was not raised', false, [], 'acknowledged'],
    ['returns nothing that was not raised', false, [], 'returned'],
    ['raises nothing twice', false, ['raised'], 'raised'],
    ['acknowledges nothing twice as the first', false, ['raised', 'acknowledged'], 'acknowledged'],
    ['returns nothing twice', false, ['raised', 'returned'], 'returned'],
    ['lets nothing but words follow the end', false, ['raised', 'acknowledged', 'returned'], 'returned'],
    ['calls nobody for what is over', false, ['raised', 'acknowledged', 'returned'], 'escalated'],
    ['calls nobody for what is acknowledged', false, ['raised', 'acknowledged'], 'escalated'],
    ['resets nothing that is active', true, ['raised', 'acknowledged'], 'reset'],
    ['resets nothing that is not acknowledged', true, ['raised', 'returned'], 'reset'],
    ['resets nothing that is not latched', false, ['raised', 'returned'], 'reset'],
    ['ends a latched alarm by no acknowledgement', true, ['raised', 'acknowledged', 'returned'], 'acknowledged'],
    ['acknowledges nothing that is suppressed', false, ['raised', 'suppressed'], 'acknowledged'],
    ['unsuppresses nothing that is not suppressed', false, ['raised'], 'unsuppressed'],
    ['recalls nothing that nobody acknowledged', false, ['raised'], 'recalled'],
    ['takes a second acknowledgement for none where there is no first', false, ['raised'], 'acknowledged-too'],
    ['knows no other kinds', false, ['raised'], 'forgotten'],
  ])('%s', async (_, latched, before, kind) => {
    const id = await lived(latched, ...before);
    await expect(say(id, kind)).rejects.toMatchObject({ code: '23514' });
  });

  test('numbers what becomes of an alarm and gives the state after it, whatever is written', async () => {
    const id = await lived(true, 'raised', 'noted', 'returned', 'acknowledged', 'raised-again');
    await pool().query(
      `INSERT INTO alarm_event (site_id, id, occurrence_id, kind, at, detail, seq, state)
       VALUES ($1, $2, $3, 'acknowledged', now(), '{}', 99, 'over')`,
      [siteId, newId(), id],
    );
    const { rows } = await query('SELECT seq, state FROM alarm_event WHERE occurrence_id = $1 ORDER BY seq', [id]);
    expect(rows.map(({ seq, state }) => `${seq} ${state}`)).toEqual([
      '1 unacknowledged',
      '2 unacknowledged',
      '3 latched-unacknowledged',
      '4 latched-acknowledged',
      '5 unacknowledged',
      '6 acknowledged',
    ]);
  });

  test('lets one of ten at once be the first to acknowledge', async () => {
    const id = await lived(false, 'raised');
    const pressed = await Promise.allSettled(Array.from({ length: 10 }, () => say(id, 'acknowledged')));
    expect(pressed.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });
});

describe('what keeps an alarm from calling', () => {
  const HOUR = 3_600_000;
  const at = new Date('2026-03-04T10:00:00Z');
  const later = (hours: number) => new Date(at.getTime() + hours * HOUR);
  const SHELVED = {
    kind: 'shelved',
    what: 'begun',
    until: later(1),
    by: 'local',
    reason: 'probe in the buffer',
    owner: null,
  };

  async function add(given: Record<string, unknown> = {}, alarmId = alarm.id): Promise<string> {
    const id = newId();
    const { run = id, kind, what, until, by, reason, owner } = { ...SHELVED, ...given };
    await pool().query(
      `INSERT INTO alarm_suppression (site_id, id, run_id, alarm_id, kind, what, at, until, by, owner, reason, detail)
       VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, '{}')`,
      [siteId, id, run, alarmId, kind, what, at, until, by, owner, reason],
    );
    return id;
  }
  const refuse = async (given: Record<string, unknown>, alarmId?: string) =>
    await expect(add(given, alarmId)).rejects.toMatchObject({ code: '23514' });

  test('has an end, a reason and somebody who did it, and lasts no longer than it may', async () => {
    await refuse({ until: null });
    await refuse({ until: at });
    await refuse({ until: later(25) });
    await refuse({ reason: '  ' });
    await refuse({ reason: null });
    await refuse({ by: null });
    await refuse({ kind: 'out-of-service' });
    await refuse({ kind: 'out-of-service', owner: 'local', until: later(24 * 15) });
  });

  test('is begun once and ended once, and only after it was begun', async () => {
    await refuse({ what: 'ended', run: newId() });
    const run = await add();
    await refuse({});
    await refuse({ what: 'ended', run: newId() });
    await add({ what: 'ended', run });
    await refuse({ what: 'ended', run });
    await add({ what: 'ended', run: await add() });
  });

  test('is begun by one of ten at once', async () => {
    const begun = await Promise.allSettled(Array.from({ length: 10 }, () => add({ kind: 'by-design' })));
    expect(begun.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  });

  test('never is an operating state for oxygen, high temperature, oxidant and leak, and a shelf is short', async () => {
    const { rows } = await query(
      `SELECT s.key, s.system_id AS "systemId" FROM sensor s WHERE s.site_id = $1 AND s.quantity = 'temperature' LIMIT 1`,
      [siteId],
    );
    const grave = newId();
    const on = { kind: 'sensor', sensor: rows[0].key, above: 27 };
    await define(grave, rows[0].systemId, 'grave', on);
    await refuse({ kind: 'by-design' }, grave);
    await refuse({ until: later(2) }, grave);
    await refuse({ kind: 'out-of-service', owner: 'local', until: later(9) }, grave);
    await add({}, grave);
    // Low temperature is no such alarm.
    await query(`UPDATE alarm_definition SET detail = $3 WHERE site_id = $1 AND id = $2`, [
      siteId,
      grave,
      JSON.stringify({ on: { kind: 'sensor', sensor: rows[0].key, below: 20 } }),
    ]);
    await add({ kind: 'by-design' }, grave);
  });
});
