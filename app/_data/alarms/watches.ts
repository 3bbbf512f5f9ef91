import 'server-only';
import type { Watch } from '#core/alarms/is-true';
import type { Memory } from '#core/alarms/worked';
import type { Transaction } from '../transaction';

/** Where an alarm stands, as it is stored. */
export interface StoredWatch {
  alarmId: string;
  watch: Watch;
  /** The time it is raised, while it is. */
  occurrenceId: string | null;
  /** Fingerprint of what it was held to. */
  definition: string;
}

/** Where each alarm of a site stands, by its id. */
export async function loadWatches(tx: Transaction, siteId: string): Promise<Map<string, StoredWatch>> {
  const rows = await tx.$queryRaw<WatchRow[]>`
    SELECT alarm_id AS "alarmId", phase, (extract(epoch FROM since) * 1000)::float8 AS "sinceMs",
           (extract(epoch FROM due_at) * 1000)::float8 AS "dueMs", (extract(epoch FROM last_at) * 1000)::float8 AS "lastMs",
           last_value AS "lastValue", memory, occurrence_id AS "occurrenceId", definition
      FROM alarm_watch WHERE site_id = ${siteId}::uuid`;
  return new Map(
    rows.map(({ alarmId, occurrenceId, definition, memory, ...place }) => {
      // The memory was written below by the same judge: with another definition it begins anew.
      const watch: Watch = { ...place, ...(memory === null ? {} : { memory }) };
      return [alarmId, { alarmId, watch, occurrenceId, definition }] as const;
    }),
  );
}

type WatchRow = Omit<StoredWatch, 'watch'> & Omit<Watch, 'memory'> & { memory: Memory | null };

/** Keeps where alarms stand, all in one statement. */
export async function saveWatches(tx: Transaction, siteId: string, watches: readonly StoredWatch[]): Promise<void> {
  if (watches.length === 0) return;
  const instant = (ms: number | null) => (ms === null ? null : new Date(ms).toISOString());
  const said = JSON.stringify(
    watches.map(({ alarmId, watch, occurrenceId, definition }) => ({
      alarm_id: alarmId,
      phase: watch.phase,
      since: instant(watch.sinceMs),
      due_at: instant(watch.dueMs),
      last_at: instant(watch.lastMs),
      last_value: watch.lastValue,
      memory: watch.memory ?? null,
      occurrence_id: occurrenceId,
      definition,
    })),
  );
  await tx.$executeRaw`
    INSERT INTO alarm_watch (site_id, alarm_id, phase, since, due_at, last_at, last_value, memory, occurrence_id, definition)
    SELECT ${siteId}::uuid, w.alarm_id, w.phase, w.since, w.due_at, w.last_at, w.last_value, w.memory, w.occurrence_id,
           w.definition
      FROM jsonb_to_recordset(${said}::jsonb) AS w(alarm_id uuid, phase text, since timestamptz, due_at timestamptz,
           last_at timestamptz, last_value double precision, memory jsonb, occurrence_id uuid, definition text)
        ON CONFLICT (site_id, alarm_id) DO UPDATE SET phase = excluded.phase, since = excluded.since,
           due_at = excluded.due_at, last_at = excluded.last_at, last_value = excluded.last_value, memory = excluded.memory,
           occurrence_id = excluded.occurrence_id, definition = excluded.definition`;
}

/** Forgets where alarms stand that are defined no more. */
export async function forgetWatches(tx: Transaction, siteId: string, alarmIds: readonly string[]): Promise<void> {
  if (alarmIds.length > 0) await tx.alarmWatch.deleteMany({ where: { siteId, alarmId: { in: [...alarmIds] } } });
}

/** The newest value an alarm was held to; null when there was none. */
export async function lastValueOf(tx: Transaction, siteId: string, alarmId: string): Promise<number | null> {
  const watch = await tx.alarmWatch.findUnique({ where: { siteId_alarmId: { siteId, alarmId } } });
  return watch?.lastValue ?? null;
}
