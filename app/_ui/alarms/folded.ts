import type { AlarmView } from './alarm-view';

/** An alarm of a list with those that stand under it. */
export interface Folded {
  alarm: AlarmView;
  under: AlarmView[];
}

/** Alarms of a list, each under its first cause where that is in the list as well. What has no cause there stands by itself. */
export function folded(alarms: readonly AlarmView[]): Folded[] {
  const ids = new Set(alarms.map(({ id }) => id));
  const stands = ({ id, causeId }: AlarmView) => causeId === null || causeId === id || !ids.has(causeId);
  return alarms
    .filter(stands)
    .map((alarm) => ({ alarm, under: alarms.filter((one) => !stands(one) && one.causeId === alarm.id) }));
}
