import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import { instantSaid } from '../words/instant';
import { AcknowledgeFields } from './acknowledge-fields';
import { toAcknowledge } from './to-acknowledge';
import { AlarmStateMark } from './alarm-state';
import { type AlarmView, alarmAddress, limitSaid, prioritySaid, type SiteView } from './alarm-view';
import style from './alarms.module.css';
import { recalledSaid, unsuppressedSaid } from './life-words';
import { SeenByHand } from './seen-by-hand';
import { ToldList } from './told-list';
import { ValueNow } from './value-now';

interface OpenAlarmProps {
  site: SiteView;
  alarm: AlarmView;
  units: Custom;
  /** Acknowledges it; null for those who may not. */
  run: ((form: FormData) => void) | null;
  isBusy: boolean;
  /** What is folded under it. */
  under?: readonly AlarmView[];
}

/** An alarm that wants something: how it stands, and what acknowledges it. */
export function OpenAlarm({ site, alarm, units, run, isBusy, under = [] }: OpenAlarmProps) {
  return (
    <>
      <h3>
        <Link href={alarmAddress(site.key, alarm.id)}>{alarm.name}</Link>
        <span className={style.about}>{alarm.system.name}</span>
      </h3>
      <p>
        <AlarmStateMark state={alarm.state} isEnded={alarm.endedBy !== null} />
        <PrioritySaid alarm={alarm} />
      </p>
      <CalledAnew alarm={alarm} units={units} />
      <Reads alarm={alarm} site={site} units={units} />
      {run && alarm.acknowledged === null && !alarm.state.startsWith('suppressed') ? (
        <form action={run} onReset={(event) => event.preventDefault()} className={style.form}>
          <AcknowledgeFields site={site.key} alarm={alarm} page="list" isBusy={isBusy} folded={toAcknowledge(under)} />
        </form>
      ) : null}
      <Facts alarm={alarm} site={site} />
    </>
  );
}

/** How soon somebody must act, after the state. */
export function PrioritySaid({ alarm: { definition } }: { alarm: AlarmView }) {
  const said = prioritySaid(definition);
  if (said === null) return null;
  return said.startsWith('high') ? <strong>, {said}</strong> : <>, {said}</>;
}

/** Why an alarm calls that somebody had acknowledged before, or that was suppressed. */
export function CalledAnew({ alarm: { calledBy, definition }, units }: { alarm: AlarmView; units: Custom }) {
  switch (calledBy.kind) {
    case 'recalled':
      return (
        <p>
          <strong>{recalledSaid(calledBy.detail, definition, units)}.</strong>
        </p>
      );
    case 'raised-again':
      return (
        <p>
          <strong>It came back before anybody reset it.</strong>
        </p>
      );
    case 'unsuppressed':
      return <p>{unsuppressedSaid(calledBy.detail)}.</p>;
    default:
      return null;
  }
}

/** What it reads, and what it calls for: what is looked at first. */
function Reads({ alarm, site, units }: { alarm: AlarmView; site: SiteView; units: Custom }) {
  return (
    <dl className={style.facts}>
      {alarm.caller === null ? (
        <>
          <dt>Newest reading</dt>
          <dd>
            <ValueNow alarm={alarm} zone={site.zone} units={units} />
          </dd>
          <dt>Watches</dt>
          <dd>{limitSaid(alarm.definition, units)}</dd>
        </>
      ) : (
        <SeenByHand site={site.key} alarm={alarm} />
      )}
    </dl>
  );
}

/** Who knows of it. */
function Facts({ alarm, site }: { alarm: AlarmView; site: SiteView }) {
  const { acknowledged } = alarm;
  return (
    <dl className={style.facts}>
      <dt>Told</dt>
      <dd>
        <ToldList alarm={alarm} site={site} />
      </dd>
      {acknowledged ? (
        <>
          <dt>Acknowledged</dt>
          <dd>
            by {acknowledged.by}, {instantSaid(acknowledged.at, site.zone)}
            {acknowledged.note === null ? '' : `: ${acknowledged.note}`}
          </dd>
        </>
      ) : null}
    </dl>
  );
}
