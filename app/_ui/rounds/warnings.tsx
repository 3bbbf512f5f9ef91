import { CLEANNESS_WORDS } from '#core/rounds/places';
import Link from '../frame/link';
import type { ReactNode } from 'react';
import { siteAddress } from '../frame/site-address';
import type { PlaceView, RoundView } from './round-view';
import style from './rounds.module.css';
import { momentSaid } from '../words/moment';

/**
 * What whoever comes to a place has to know first: open alarms, states in force, alarms that call nobody, safeguards out of
 * service, and clean hands.
 */
export function Warnings({ page: { site, wasAt, round }, place }: { page: RoundView; place: PlaceView }) {
  const { off, alarms, states, suppressed } = place.stands;
  const goesBack = wasAt !== null && wasAt.cleanness > place.cleanness && round.signed === null;
  return (
    <>
      {goesBack ? (
        <Warning shape="▲">
          <strong>
            You come from {wasAt.name} ({CLEANNESS_WORDS[wasAt.cleanness]}).
          </strong>{' '}
          Are hands, nets, hoses and boots disinfected? Or let somebody else do this place.
        </Warning>
      ) : null}
      {alarms.map(({ id, name, raisedAt, isActive, isAcknowledged }) => (
        <Warning key={id} shape="▲">
          Alarm {isActive ? 'active' : 'returned to normal'}, {isAcknowledged ? 'acknowledged' : 'not acknowledged'}:{' '}
          <Link href={siteAddress(site.key, 'alarms', id)}>{name}</Link>, raised {momentSaid(raisedAt, site.zone)}
        </Warning>
      ))}
      {states.map(({ state, until, outstayed }) => (
        <Warning key={state} shape={outstayed ? '▲' : '◐'}>
          State in force: {state.replaceAll('-', ' ')}, {outstayed ? 'meant to have ended' : 'until'}{' '}
          {momentSaid(until, site.zone)}
        </Warning>
      ))}
      {suppressed.map(({ run, name, how, until, isActive }) => (
        <Warning key={run} shape={isActive ? '▲' : '✕'}>
          Calls nobody{isActive ? ', and is active' : ''}: {name}, {how} until {momentSaid(until, site.zone)}
        </Warning>
      ))}
      {off.map(({ name, until }) => (
        <Warning key={name} shape="✕">
          Out of service until {until}: {name}
        </Warning>
      ))}
    </>
  );
}

function Warning({ shape, children }: { shape: string; children: ReactNode }) {
  return (
    <p className={style.warning}>
      <span aria-hidden="true" className={style.wrong}>
        {shape}
      </span>{' '}
      {children}
    </p>
  );
}
