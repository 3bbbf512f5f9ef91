import Link from '../frame/link';
import { OFFERED_MIN } from '#core/call-outs/call-out';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { Field } from '../sign-in/field';
import { PersonForm } from '../sign-in/person-form';
import { instantSaid } from '../words/instant';
import type { CallOutActions } from './call-outs-body';
import style from './call-outs.module.css';
import type { CallOutsView, CallOutView } from './call-outs-view';

interface OpenCallOutProps {
  site: CallOutsView['site'];
  line: CallOutView;
  actions: CallOutActions;
}

/** Somebody who is in alone: until when, who was called, and the presses that take more time or end it. */
export function OpenCallOut({ site, line, actions }: OpenCallOutProps) {
  const { id, name, isOwn, state } = line;
  const hidden = { site: site.key, callOut: id };
  return (
    <Section id={`out-${id}`} title={isOwn ? 'You are in alone' : `${name} is in alone`}>
      <Facts site={site} line={line} />
      {line.mayEnd ? (
        <PersonForm send={actions.end} hidden={hidden} button={isOwn ? 'I am out and safe' : 'They are back and safe'}>
          {isOwn ? null : <Field label="How you know: seen, spoken to" name="note" required maxLength={500} />}
        </PersonForm>
      ) : null}
      {line.mayExtend ? (
        <div className={style.more}>
          {OFFERED_MIN.map((min) => (
            <PersonForm
              key={min}
              send={actions.extend}
              hidden={{ ...hidden, minutes: String(min) }}
              button={`${min} min more`}
              look="second"
            />
          ))}
        </div>
      ) : null}
      {!isOwn && state === 'overdue' && line.seenTo === null ? (
        <PersonForm send={actions.seeTo} hidden={hidden} button="I look after it" look="second" />
      ) : null}
    </Section>
  );
}

function Facts({ site, line }: Omit<OpenCallOutProps, 'actions'>) {
  const { place, state, until, begunAt, named, called, seenTo, occurrence } = line;
  return (
    <dl className={style.facts}>
      <dt>Where</dt>
      <dd>
        {place}
        {occurrence === null ? null : (
          <>
            {', '}
            <Link href={siteAddress(site.key, 'alarms', occurrence)}>the alarm</Link>
          </>
        )}
      </dd>
      <dt>Since</dt>
      <dd>{instantSaid(begunAt, site.zone)}</dd>
      <dt>Back by</dt>
      <dd className={state === 'overdue' ? style.overdue : undefined}>
        {instantSaid(until, site.zone)}
        {state === 'overdue' ? ': not back' : ''}
      </dd>
      {named === null ? null : (
        <>
          <dt>May say so as well</dt>
          <dd>{named}</dd>
        </>
      )}
      {state === 'overdue' ? (
        <>
          <dt>Called</dt>
          <dd>{called.length === 0 ? 'nobody yet' : called.join(', ')}</dd>
          <dt>Looks after it</dt>
          <dd>{seenTo ?? 'nobody has said so'}</dd>
        </>
      ) : null}
    </dl>
  );
}
