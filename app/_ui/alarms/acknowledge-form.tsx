'use client';

import { useActionState } from 'react';
import type { FormAction, FormAnswer } from '../form/answer';
import { instantSaid } from '../words/instant';
import { AcknowledgeFields } from './acknowledge-fields';
import type { FoldedTime } from './to-acknowledge';
import { AcknowledgedNote, type AcknowledgedView } from './acknowledged-note';
import type { AlarmView, SiteView } from './alarm-view';
import style from './alarms.module.css';

interface AcknowledgeFormProps {
  site: SiteView;
  alarm: AlarmView;
  folded: readonly FoldedTime[];
  acknowledge: FormAction<AcknowledgedView>;
}

/** Acknowledges the alarm of a page, and says how that went; once it is, who did. */
export function AcknowledgeForm({ site, alarm, folded, acknowledge }: AcknowledgeFormProps) {
  const asked = acknowledge as (
    before: FormAnswer<AcknowledgedView> | null,
    form: FormData,
  ) => Promise<FormAnswer<AcknowledgedView>>;
  const [answer, run, isBusy] = useActionState<FormAnswer<AcknowledgedView> | null, FormData>(asked, null);
  const { acknowledged } = alarm;
  return (
    <>
      {alarm.state.startsWith('suppressed') ? (
        <p>It calls nobody just now; what is active when that ends has to be acknowledged then.</p>
      ) : acknowledged === null ? (
        <form action={run} onReset={(event) => event.preventDefault()} className={style.form}>
          <AcknowledgeFields site={site.key} alarm={alarm} page="alarm" isBusy={isBusy} folded={folded} />
        </form>
      ) : (
        <p>
          Acknowledged by {acknowledged.by}, {instantSaid(acknowledged.at, site.zone)}.
        </p>
      )}
      <AcknowledgedNote answer={answer} zone={site.zone} />
    </>
  );
}
