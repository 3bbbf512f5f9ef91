import { readingSaid } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import { instantSaid } from '../words/instant';
import { type AlarmView, valueSaid, watchedElse } from './alarm-view';
import style from './alarms.module.css';

/** The newest reading of what an alarm watches, with when it was taken; one that is too old to say anything is said to be. */
export function ValueNow({ alarm, zone, units }: { alarm: AlarmView; zone: string; units: Custom }) {
  const { latest, definition } = alarm;
  if (definition.on.kind === 'by-hand') return <>none: a person saw it, and a person says that it is right again</>;
  const other = watchedElse(definition);
  if (other !== null) return <>none: {other}</>;
  if (latest === null) return <>none</>;
  const { value, quality, at, isStale } = latest;
  const { on, quantity, limits } = definition;
  // Of what is worked out of readings, what its sensor reads: of two, the first.
  const isPlain = limits === undefined && quantity !== undefined;
  return (
    <span className={isStale ? style.stale : undefined}>
      <b>{isPlain ? readingSaid(quantity, units, value) : valueSaid(definition, value, units)}</b>
      {on.kind === 'deviation' ? ' by one of the two' : ''}
      {quality === 'good' ? '' : ` (${quality})`} at {instantSaid(at, zone)}
      {isStale ? <strong>, stale: nothing newer has come</strong> : null}
    </span>
  );
}
