import 'server-only';
import { hasTurned, turnsWithinMin } from '#core/alarms/second-clock';
import type { OpenRow } from '#data/alarms/occurrences';
import type { StoredWatch } from '#data/alarms/watches';
import type { KeptDefinition } from '#shape/alarms/kept-definition';
import type { DefinedSite } from './defined-alarms';
import type { Doings } from './doings';

/** Age, ms, up to which the newest reading says something of whether a value has turned. Common practice, no source. */
const FRESH_MS = 15 * 60_000;

/**
 * Lets the second clock of what was acknowledged run out: what has not turned calls again, and what has is looked at again
 * after as long. A value that nobody reads any more has not turned.
 */
export function passClocks(
  site: DefinedSite,
  doings: Doings,
  stored: ReadonlyMap<string, StoredWatch>,
  at: Date,
  availableS: ReadonlyMap<string, number>,
): void {
  for (const row of doings.times.all()) {
    if (row.turnBy === null || row.turnBy > at || !row.active || !row.acknowledged) continue;
    const alarm = site.alarms.get(row.alarmId);
    const watch = stored.get(row.alarmId)?.watch;
    const isFresh = watch?.lastMs != null && at.getTime() - watch.lastMs <= FRESH_MS;
    const value = isFresh ? watch.lastValue : null;
    if (alarm?.condition?.kind === 'limits' && hasTurned(alarm.condition, row.valueThen, value))
      doings.times.put({ ...row, ...clockOf(alarm.kept, value, at, availableS.get(row.alarmId) ?? null) });
    else doings.recall(row, { why: 'not-turned', value });
  }
}

/**
 * The second clock of an alarm that is acknowledged at an instant. One that nobody answers has none.
 *
 * @param availableS   s from the alarm to the last chance, by the review of its system; null: not known
 */
export function clockOf(
  { answeredBy, quantity }: Pick<KeptDefinition, 'answeredBy' | 'quantity'>,
  value: number | null,
  at: Date,
  availableS: number | null,
): Pick<OpenRow, 'turnBy' | 'valueThen'> {
  if (answeredBy === 'nobody') return { turnBy: null, valueThen: null };
  const minutes = turnsWithinMin(quantity, availableS);
  return { turnBy: new Date(at.getTime() + minutes * 60_000), valueThen: value };
}
