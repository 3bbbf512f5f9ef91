import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { momentSaid } from '../words/moment';
import { ProofList } from './proof-list';
import { StateCautions } from './state-cautions';
import { AuthoriseForm, EndForm, PutOffForm, type StatePlace } from './state-forms';
import { type SiteOfStates, type StateLineView, stateName } from './state-view';
import style from './states.module.css';

export interface StateActions {
  putOff: FormAction<unknown>;
  end: FormAction<unknown>;
  /** For those who may let a treatment go on; null for others. */
  authorise: FormAction<unknown> | null;
}

/** How a state stands: in force until when, outstayed, or ended by a device. */
export function StateStands({
  line,
  zone,
}: {
  line: Pick<StateLineView, 'outstayed' | 'isOver' | 'until'>;
  zone: string;
}) {
  const until = momentSaid(line.until, zone);
  if (line.outstayed)
    return (
      <>
        <span aria-hidden="true" className={style.mark}>
          ▲
        </span>{' '}
        <strong>outstayed</strong>, it was to end {until}
      </>
    );
  return line.isOver ? <>ended by a device {until}; nobody has said yet what they saw</> : <>until {until}</>;
}

/** One state a system is in, with what may be done with it. @param actions for those who may */
export function StateLine({
  site,
  line,
  actions,
  named,
  units,
}: {
  site: SiteOfStates;
  units: Custom;
  line: StateLineView;
  actions: StateActions | null;
  /** Whether the system is named: it is not on the system's own page. */
  named: boolean;
}) {
  const place = { site: site.key, system: line.system.key };
  return (
    <article className={style.state}>
      <h3>
        {stateName(line.state)}
        {named ? (
          <>
            {', '}
            <Link href={siteAddress(site.key, 'states', line.system.key)}>{line.system.name}</Link>
          </>
        ) : null}
      </h3>
      <p>
        <StateStands line={line} zone={site.zone} />. Begun {momentSaid(line.begunAt, site.zone)} by {line.begunBy}.
        {line.note ? ` “${line.note}”` : ''}
      </p>
      {line.putOff.map(({ at, by, until, note }) => (
        <p key={at} className={style.small}>
          Put off {momentSaid(at, site.zone)} by {by}, until {momentSaid(until, site.zone)}
          {note ? `: ${note}` : ''}
        </p>
      ))}
      {line.hasHandsIn ? (
        <p className={style.small}>Hands are in the water: it never ends by itself.</p>
      ) : line.endsItself && !line.isOver ? (
        <p className={style.small}>A device ends it.</p>
      ) : null}
      {line.authority ? <Authority line={line} zone={site.zone} /> : null}
      {actions ? (
        <Acts place={place} line={line} actions={actions} units={units} zone={site.zone} />
      ) : (
        <ProofList proofs={line.proofs.map(({ proof }) => proof)} />
      )}
    </article>
  );
}

/** Until when a treatment may go on without a lead saying so. */
function Authority({ line: { authority }, zone }: { line: StateLineView; zone: string }) {
  if (!authority) return null;
  const until = momentSaid(authority.until, zone);
  if (!authority.isOver) return <p className={style.small}>A lead looks again by {until}.</p>;
  return (
    <p>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>not let go on</strong>: a lead was to look again by {until}.
    </p>
  );
}

function Acts({
  place,
  line,
  actions,
  units,
  zone,
}: {
  place: StatePlace;
  line: StateLineView;
  actions: StateActions;
  units: Custom;
  zone: string;
}) {
  return (
    <>
      <Fold title={line.isOver ? 'Say what you saw' : 'End it'} open={line.outstayed}>
        <StateCautions state={line.state} equipment={line.equipment} />
        <EndForm place={place} line={line} end={actions.end} units={units} zone={zone} />
      </Fold>
      {line.authority && actions.authorise ? (
        <Fold title="Let it go on for another day" open={line.authority.isOver}>
          <AuthoriseForm place={place} line={line} authorise={actions.authorise} />
        </Fold>
      ) : null}
      {line.isOver ? null : (
        <Fold title="Put its end off">
          <PutOffForm place={place} line={line} putOff={actions.putOff} />
        </Fold>
      )}
    </>
  );
}
