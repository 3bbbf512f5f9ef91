'use client';

import Link from 'next/link';
import { useActionState } from 'react';
import type { Custom } from '#core/units/shown';
import type { FormAction, FormAnswer } from '../form/answer';
import { instantSaid } from '../words/instant';
import { AcknowledgeFields } from './acknowledge-fields';
import { AcknowledgedNote, type AcknowledgedView } from './acknowledged-note';
import { AlarmStateMark } from './alarm-state';
import { type AlarmView, alarmAddress, limitSaid, type SiteView } from './alarm-view';
import style from './alarms.module.css';
import { ToldList } from './told-list';
import { ValueNow } from './value-now';

interface OpenAlarmsProps {
  site: SiteView;
  alarms: AlarmView[];
  units: Custom;
  mayAcknowledge: boolean;
  acknowledge: FormAction<AcknowledgedView>;
}

/** The alarms that want something, each to be acknowledged where it stands. What came of it stands above them. */
export function OpenAlarms({ site, alarms, units, mayAcknowledge, acknowledge }: OpenAlarmsProps) {
  const asked = acknowledge as (
    before: FormAnswer<AcknowledgedView> | null,
    form: FormData,
  ) => Promise<FormAnswer<AcknowledgedView>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<AcknowledgedView> | null, FormData>(asked, null);
  return (
    <>
      <AcknowledgedNote answer={answer} zone={site.zone} />
      {alarms.length === 0 ? (
        <p>No alarm is open.</p>
      ) : (
        <ol className={style.log}>
          {alarms.map((alarm) => (
            <li key={alarm.id} data-state={alarm.state}>
              <time dateTime={alarm.raisedAt}>{instantSaid(alarm.raisedAt, site.zone)}</time>
              <div>
                <h3>
                  <Link href={alarmAddress(site.key, alarm.id)}>{alarm.name}</Link>
                  <span className={style.about}>{alarm.system.name}</span>
                </h3>
                <p>
                  <AlarmStateMark state={alarm.state} isEnded={alarm.endedBy !== null} />
                </p>
                <Facts alarm={alarm} site={site} units={units} />
                {mayAcknowledge && alarm.acknowledged === null ? (
                  <form action={run} onReset={(event) => event.preventDefault()} className={style.form}>
                    <AcknowledgeFields site={site.key} alarm={alarm} page="list" isBusy={isBusy} />
                  </form>
                ) : null}
              </div>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

function Facts({ alarm, site, units }: { alarm: AlarmView; site: SiteView; units: Custom }) {
  const { acknowledged } = alarm;
  return (
    <dl className={style.facts}>
      <dt>Watches</dt>
      <dd>{limitSaid(alarm.definition, units)}</dd>
      <dt>Newest reading</dt>
      <dd>
        <ValueNow alarm={alarm} zone={site.zone} units={units} />
      </dd>
      <dt>Told</dt>
      <dd>
        <ToldList alarm={alarm} />
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
