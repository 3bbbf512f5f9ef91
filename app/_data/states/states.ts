import 'server-only';
import type { StateNow } from '#core/alarms/life/suppression';
import type { StateName } from '#core/facility/system';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** An operating state that was begun and not ended, as it stands. */
export interface StateRun {
  /** Id of the event that began it. */
  run: string;
  siteId: string;
  system: { id: string; key: string; name: string };
  state: Exclude<StateName, 'normal'>;
  begunAt: Date;
  /** Account that began it. */
  begunBy: string;
  /** What they said then. */
  note: string | null;
  /** When it is meant to end, as last put off. */
  until: Date;
  /** Whether a device ends it. */
  endsItself: boolean;
  /** How its end was put off, the latest last. */
  putOff: { at: Date; by: string; until: Date; note: string | null }[];
  /** Whether it is past its end and still in force. */
  outstayed: boolean;
  /** Whether it is past the end at which a device ends it, and nobody has said yet what they saw. */
  isOver: boolean;
}

/**
 * The states that systems of a site are in: those that have outstayed their end first, then by their end. One that a device
 * ends is no longer in force once its end has come.
 *
 * @param at   the instant; that of the database when left out
 */
export async function statesInForce(siteId: string, at?: Date): Promise<StateRun[]> {
  return (await statesBegun([siteId], at)).filter(({ isOver }) => !isOver);
}

/**
 * Every state of these sites that was begun and that nobody has ended, those too that a device has ended since: one question,
 * however many sites there are.
 *
 * @param at   the instant; that of the database when left out
 */
export async function statesBegun(siteIds: readonly string[], at?: Date): Promise<StateRun[]> {
  const rows = await database().$queryRaw<(Omit<StateRun, 'putOff'> & { putOff: PutOffRow[] })[]>`
    WITH asked AS (SELECT coalesce(${at?.toISOString() ?? null}::timestamptz, now()) AS at)
    SELECT o.run_id AS run, o.site_id AS "siteId", o.state, o.begun_at AS "begunAt", o.until, o.ends_itself AS "endsItself",
           jsonb_build_object('id', y.id, 'key', y.key, 'name', y.name) AS system, b.by AS "begunBy", b.note,
           o.until <= asked.at AND NOT o.ends_itself AS outstayed, o.until <= asked.at AND o.ends_itself AS "isOver",
           (SELECT coalesce(jsonb_agg(jsonb_build_object('at', p.at, 'by', p.by, 'until', p.until, 'note', p.note)
                                      ORDER BY p.at, p.id), '[]')
              FROM state_event p
             WHERE p.site_id = o.site_id AND p.run_id = o.run_id AND p.kind = 'put-off') AS "putOff"
      FROM state_open o CROSS JOIN asked
      JOIN system y ON y.site_id = o.site_id AND y.id = o.system_id AND y.retired_at IS NULL
      JOIN state_event b ON b.site_id = o.site_id AND b.id = o.run_id
     WHERE o.site_id = ANY(${[...siteIds]}::uuid[])
     ORDER BY outstayed DESC, o.until, y.name, o.state`;
  return rows.map(({ putOff, ...run }) => ({
    ...run,
    putOff: putOff.map(({ at: when, until, ...rest }) => ({ ...rest, at: new Date(when), until: new Date(until) })),
  }));
}

interface PutOffRow {
  at: string;
  by: string;
  until: string;
  note: string | null;
}

/** A state as a transaction holds it. */
export interface OpenState {
  run: string;
  state: Exclude<StateName, 'normal'>;
  begunAt: Date;
  until: Date;
  endsItself: boolean;
}

/** A living system of a site by its key, held until the transaction ends, so that of two who begin a state one does. */
export async function holdSystem(
  tx: Transaction,
  siteId: string,
  key: string,
): Promise<{ id: string; name: string } | null> {
  const [found] = await tx.$queryRaw<{ id: string; name: string }[]>`
    SELECT id, name FROM system WHERE site_id = ${siteId}::uuid AND key = ${key} AND retired_at IS NULL FOR NO KEY UPDATE`;
  return found ?? null;
}

/** The states that systems of a site were put into and that nobody has ended, by the id of the system. */
export async function statesBySystem(tx: Transaction, siteId: string): Promise<Map<string, StateNow[]>> {
  const rows = await tx.$queryRaw<{ systemId: string; state: StateName; run: string; untilMs: number }[]>`
    SELECT system_id AS "systemId", state, run_id AS run, (extract(epoch FROM until) * 1000)::float8 AS "untilMs"
      FROM state_open WHERE site_id = ${siteId}::uuid`;
  const by = new Map<string, StateNow[]>();
  for (const { systemId, ...now } of rows) by.set(systemId, [...(by.get(systemId) ?? []), now]);
  return by;
}

/** The states of a system that were begun and not ended. */
export async function openStates(tx: Transaction, siteId: string, systemId: string): Promise<OpenState[]> {
  const rows = await tx.stateOpen.findMany({ where: { siteId, systemId } });
  return rows.map(({ runId, state, begunAt, until, endsItself }) => ({
    run: runId,
    state: state as OpenState['state'],
    begunAt,
    until,
    endsItself,
  }));
}
