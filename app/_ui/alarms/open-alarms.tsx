'use client';

import { useActionState } from 'react';
import type { Custom } from '#core/units/shown';
import type { FormAction, FormAnswer } from '../form/answer';
import { instantSaid } from '../words/instant';
import { AcknowledgedNote, type AcknowledgedView } from './acknowledged-note';
import type { AlarmView, SiteView } from './alarm-view';
import style from './alarms.module.css';
import { folded } from './folded';
import { OpenAlarm } from './open-alarm';

interface OpenAlarmsProps {
  site: SiteView;
  alarms: AlarmView[];
  units: Custom;
  mayAcknowledge: boolean;
  acknowledge: FormAction<AcknowledgedView>;
}

/**
 * The alarms that want something, each to be acknowledged where it stands, those that one explains under their first cause:
 * open while one of them is not acknowledged. What came of it stands above them.
 */
export function OpenAlarms({ site, alarms, units, mayAcknowledge, acknowledge }: OpenAlarmsProps) {
  const asked = acknowledge as (
    before: FormAnswer<AcknowledgedView> | null,
    form: FormData,
  ) => Promise<FormAnswer<AcknowledgedView>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<AcknowledgedView> | null, FormData>(asked, null);
  const each = (alarm: AlarmView, under: readonly AlarmView[] = []) => (
    <OpenAlarm
      site={site}
      alarm={alarm}
      under={under}
      units={units}
      run={mayAcknowledge ? run : null}
      isBusy={isBusy}
    />
  );
  return (
    <>
      <AcknowledgedNote answer={answer} zone={site.zone} />
      {alarms.length === 0 ? (
        <p>No alarm is open.</p>
      ) : (
        <ol className={style.log}>
          {folded(alarms).map(({ alarm, under }) => (
            <li key={alarm.id} data-state={alarm.state}>
              <time dateTime={alarm.raisedAt}>{instantSaid(alarm.raisedAt, site.zone)}</time>
              <div>
                {each(alarm, under)}
                {under.length === 0 ? null : (
                  <details className={style.under} open={under.some(({ acknowledged }) => acknowledged === null)}>
                    <summary>
                      First cause of {under.length} more: {under.map(({ name }) => name).join(', ')}
                    </summary>
                    <ol>
                      {under.map((one) => (
                        <li key={one.id}>
                          <time dateTime={one.raisedAt}>{instantSaid(one.raisedAt, site.zone)}</time>
                          {each(one)}
                        </li>
                      ))}
                    </ol>
                  </details>
                )}
              </div>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}
