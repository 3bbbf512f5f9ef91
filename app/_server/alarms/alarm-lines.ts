import 'server-only';
import { type CallRun, callRuns } from '#core/alarms/call-runs';
import type { AlarmState } from '#core/alarms/life/machine';
import type { Quality } from '#core/readings/reading';
import { accountNames } from '#data/accounts/names';
import { type CallTold, callsOf } from '#data/alarms/life';
import type { OccurrenceTold } from '#data/alarms/told';
import { type Latest, latestOf } from '#data/readings/series';
import type { KeptDefinition } from '#shape/alarms/kept-definition';

/** Age, ms, from which the newest reading says nothing of the present. Common practice, no source. */
const STALE_MS = 15 * 60_000;

/** Somebody who was to be told, by name, and how that went; repeats that ended alike are one. Instants in ISO, UTC. */
export interface ToldLine
  extends Pick<CallRun, 'why' | 'again' | 'channel' | 'state' | 'detail' | 'isCalledSince' | 'times'> {
  /** Of all for whom it went so. */
  names: string[];
  /** When the first and the last of the calls were made. */
  from: string;
  to: string;
}

/** One time that an alarm was raised, as a list shows it. Instants in ISO, UTC. */
export interface AlarmLine {
  id: string;
  /** Id of the alarm. */
  alarm: string;
  name: string;
  system: { key: string; name: string };
  state: AlarmState;
  /** How often it has called anew, and by what. */
  again: number;
  calledBy: OccurrenceTold['calledBy'];
  /** The time another alarm was raised that explains it: its first cause. */
  causeId: string | null;
  /** Name of whoever called for help; null where readings raised it. */
  caller: string | null;
  definition: KeptDefinition;
  beganAt: string;
  raisedAt: string;
  returnedAt: string | null;
  endedBy: OccurrenceTold['endedBy'];
  /** The reading that raised it. */
  value: number | null;
  /** The newest reading of its sensor. */
  latest: { value: number; quality: Quality; at: string; isStale: boolean } | null;
  acknowledged: { by: string; at: string; from: string | null; note: string | null } | null;
  told: ToldLine[];
  isRetired: boolean;
  newer: string | null;
}

/**
 * Occurrences as lines of a list, with the newest readings and who was told.
 *
 * @param at   the present
 */
export async function alarmLines(siteId: string, all: readonly OccurrenceTold[], at: Date): Promise<AlarmLine[]> {
  const calls = await callsOf(
    siteId,
    all.map(({ id }) => id),
  );
  const people = [
    ...calls.map(({ accountId }) => accountId),
    ...all.flatMap(({ acknowledged }) => acknowledged?.by ?? []),
    ...all.flatMap(({ definition: { on } }) => (on.kind === 'by-hand' ? on.by : [])),
  ];
  const [names, latest] = await Promise.all([accountNames(people), latestOf(siteId)]);
  const nameOf = (id: string) => names.get(id) ?? id;
  return all.map((one) => {
    const { acknowledged: seen, definition, returnedAt } = one;
    const { sensorId } = definition;
    return {
      id: one.id,
      alarm: one.alarmId,
      name: definition.name,
      system: { key: one.system.key, name: one.system.name },
      state: one.state,
      again: one.again,
      calledBy: one.calledBy,
      causeId: one.causeId,
      caller: definition.on.kind === 'by-hand' ? nameOf(definition.on.by) : null,
      definition,
      beganAt: one.beganAt.toISOString(),
      raisedAt: one.raisedAt.toISOString(),
      returnedAt: returnedAt?.toISOString() ?? null,
      endedBy: one.endedBy,
      value: one.value,
      latest: latestSaid(sensorId === undefined ? undefined : latest.get(sensorId), at),
      acknowledged: seen && { by: nameOf(seen.by), at: seen.at.toISOString(), from: seen.from, note: seen.note },
      told: toldLines(
        calls.filter(({ occurrenceId }) => occurrenceId === one.id),
        seen !== null,
        nameOf,
      ),
      isRetired: one.isRetired,
      newer: one.newer,
    };
  });
}

function latestSaid(latest: Latest | undefined, at: Date): AlarmLine['latest'] {
  if (!latest) return null;
  const { value, quality, atMs } = latest;
  return { value, quality, at: new Date(atMs).toISOString(), isStale: at.getTime() - atMs > STALE_MS };
}

function toldLines(calls: readonly CallTold[], acknowledged: boolean, nameOf: (id: string) => string): ToldLine[] {
  const made = calls.map((call) => ({ ...call, madeMs: call.madeAt.getTime() }));
  return callRuns(made, acknowledged).map(({ accountIds, fromMs, toMs, ...run }) => ({
    ...run,
    names: accountIds.map(nameOf),
    from: new Date(fromMs).toISOString(),
    to: new Date(toMs).toISOString(),
  }));
}
