import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { endSuppression } from '#server/alarms/end-suppression';
import { resetAlarm } from '#server/alarms/reset-alarm';
import { shelveAlarm } from '#server/alarms/shelve-alarm';
import { takeOutOfService } from '#server/alarms/take-out-of-service';
import type { Who } from '#server/gate/who';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { anyLife, normal } from '../../core/alarms/life/commands';
import { type RunAlarm, standardState, type Suppressed } from '../../core/alarms/life/run-life';
import { type AlarmSite, alarmSite, always, after as at, SENSOR, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;
let lead: Who;
let second = 0;

beforeAll(() => vi.useFakeTimers({ toFake: ['Date'], now: at(0) }));
afterAll(() => vi.useRealTimers());
beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; UPDATE account SET email = id || $$@gone.example$$');
});

/** Too cold, which an operating state may suppress. */
async function begin(latched: boolean): Promise<void> {
  const cold = warm({ on: { kind: 'sensor', sensor: SENSOR, below: 24 }, latched, suppressedIn: ['feeding'] });
  site = await alarmSite(query, withAlarms([cold], [always('robin')]));
  lead = await site.member('Lee', 'lead', 'robin');
}

/** Everything of before is forgotten, as on a first day. */
async function forget(): Promise<void> {
  await query(`SET session_replication_role = replica; DELETE FROM alarm_open; DELETE FROM alarm_event;
    DELETE FROM alarm_occurrence; DELETE FROM alarm_suppressed; DELETE FROM alarm_suppression; DELETE FROM state_open;
    DELETE FROM alarm_call; DELETE FROM alarm_watch; DELETE FROM reading_latest; SET session_replication_role = origin`);
}

async function tick(): Promise<number> {
  second += 10;
  vi.setSystemTime(at(second));
  await site.judge(second);
  return second;
}

const one = async (sql: string): Promise<Record<string, string> | undefined> => (await query(sql)).rows[0];
const alarmId = async () =>
  (await one(`SELECT id FROM alarm_definition WHERE retired_at IS NULL AND site_id = '${site.siteId}'`))?.id ?? '';
const newest = async () => (await one('SELECT id FROM alarm_occurrence ORDER BY id DESC LIMIT 1'))?.id;

/** Keeps the alarm from calling, in one of the three ways. */
async function suppress(kind: Suppressed, alarm: string): Promise<unknown> {
  const named = { site: site.siteKey };
  if (kind === 'SHLV') return await shelveAlarm(lead, { ...named, alarm, hours: 4, reason: 'probe in the buffer' });
  const more = { hours: 4, unit: 'hours', owner: lead.id, reason: 'new probe ordered' } as const;
  if (kind === 'OOS') return await takeOutOfService(lead, { ...named, alarm, ...more });
  return await query(
    `INSERT INTO state_open (site_id, system_id, state, run_id, begun_at, until, ends_itself)
     SELECT site_id, system_id, 'feeding', $1, $2, $3, true FROM alarm_definition WHERE id = $4`,
    [newId(), at(second), at(second + 86_400), alarm],
  );
}

/** The alarm in the database, moved by readings, people and the clock alone. */
async function alarmInDatabase(): Promise<RunAlarm> {
  await tick();
  const alarm = await alarmId();
  let by: Suppressed | null = null;
  const named = { site: site.siteKey };
  const onNewest = async (act: (occurrence: string) => Promise<unknown>) => {
    const occurrence = await newest();
    if (occurrence !== undefined) await act(occurrence);
  };
  return {
    condition: async (holds) => {
      await site.send([[second + 5, holds ? 23 : 25]]);
      await tick();
    },
    acknowledge: () => onNewest((occurrence) => acknowledgeAlarm(lead, { ...named, occurrence, page: 'alarm' })),
    reset: () => onNewest((occurrence) => resetAlarm(lead, { ...named, occurrence })),
    realarm: async () => {
      await query('UPDATE alarm_open SET turn_by = $1 WHERE turn_by IS NOT NULL', [at(second)]);
      await tick();
    },
    suppress: async (kind) => {
      if (by !== null) return;
      by = kind;
      await suppress(kind, alarm);
      await tick();
    },
    unsuppress: async (kind) => {
      if (by !== kind) return;
      by = null;
      const run = (await one('SELECT run_id AS run FROM alarm_suppressed'))?.run ?? '';
      if (kind === 'SUPR') await query('DELETE FROM state_open');
      else await endSuppression(lead, { ...named, run });
      await tick();
    },
    state: async () => {
      const kind = (await one('SELECT kind FROM alarm_suppressed'))?.kind;
      const suppressed = { shelved: 'SHLV', 'by-design': 'SUPR', 'out-of-service': 'OOS' }[kind ?? ''] ?? null;
      const state = await one('SELECT state FROM alarm_event ORDER BY occurrence_id DESC, seq DESC LIMIT 1');
      return standardState(suppressed as Suppressed | null, state?.state as Parameters<typeof standardState>[1]);
    },
  };
}

/** What still wants something says what the last event of each says. */
async function strays(): Promise<number> {
  const row = await one(`SELECT count(*)::int AS n FROM
    (SELECT DISTINCT ON (occurrence_id) occurrence_id, state FROM alarm_event ORDER BY occurrence_id, seq DESC) e
    FULL JOIN alarm_open o USING (occurrence_id)
    WHERE (e.state = 'over') <> (o.occurrence_id IS NULL)
       OR o.acknowledged <> (e.state IN ('acknowledged', 'latched-acknowledged', 'suppressed-latched-acknowledged'))
       OR o.active <> (e.state IN ('unacknowledged', 'acknowledged', 'suppressed'))
       OR o.suppressed <> (e.state LIKE 'suppressed%')`);
  return Number(row?.n);
}

test.each([false, true])(
  'the life of an alarm in the database is that of the standard (latching: %s)',
  async (latching) => {
    await begin(latching);
    await fc.assert(
      fc.asyncProperty(anyLife(14), async (commands) => {
        await forget();
        const real = await alarmInDatabase();
        await fc.asyncModelRun(() => ({ model: normal(latching), real }), commands);
        expect(await strays()).toBe(0);
      }),
      { numRuns: 4, endOnFailure: true },
    );
    expect(await verifyChain(site.siteId)).toMatchObject({ isWhole: true });
  },
);
