import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';

/** What somebody saw who called for help by it, and where: the facts of an alarm that was raised by hand. */
export function SeenByHand({ site, alarm: { caller, definition } }: { site: string; alarm: AlarmView }) {
  const { on } = definition;
  if (on.kind !== 'by-hand') return null;
  return (
    <>
      <dt>Called by</dt>
      <dd>{caller}</dd>
      {on.where === undefined ? null : (
        <>
          <dt>Where</dt>
          <dd>
            {on.round === undefined ? on.where : <Link href={siteAddress(site, 'rounds', on.round)}>{on.where}</Link>}
          </dd>
        </>
      )}
      {on.saw === undefined ? null : (
        <>
          <dt>Seen</dt>
          <dd className={style.note}>{on.saw}</dd>
        </>
      )}
    </>
  );
}
