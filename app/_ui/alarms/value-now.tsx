import type { Custom } from '#core/units/shown';
import { instantSaid } from '../words/instant';
import { type AlarmView, valueSaid } from './alarm-view';
import style from './alarms.module.css';

/** The newest reading of what an alarm watches, with when it was taken; one that is too old to say anything is said to be. */
export function ValueNow({ alarm, zone, units }: { alarm: AlarmView; zone: string; units: Custom }) {
  const { latest, definition } = alarm;
  if (definition.on.kind === 'by-hand') return <>none: a person saw it, and a person says that it is right again</>;
  if (definition.limits === undefined) return <>none: it watches for silence</>;
  if (latest === null) return <>none</>;
  const { value, quality, at, isStale } = latest;
  return (
    <span className={isStale ? style.stale : undefined}>
      <b>{valueSaid(definition, value, units)}</b>
      {quality === 'good' ? '' : ` (${quality})`} at {instantSaid(at, zone)}
      {isStale ? <strong>, stale: nothing newer has come</strong> : null}
    </span>
  );
}
