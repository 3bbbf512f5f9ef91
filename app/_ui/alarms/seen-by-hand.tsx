import type { AlarmView } from './alarm-view';
import style from './alarms.module.css';

/** What somebody saw who called for help by it, and where: the facts of an alarm that was raised by hand. */
export function SeenByHand({ alarm: { caller, definition } }: { alarm: AlarmView }) {
  const { on } = definition;
  if (on.kind !== 'by-hand') return null;
  return (
    <>
      <dt>Called by</dt>
      <dd>{caller}</dd>
      {on.where === undefined ? null : (
        <>
          <dt>Where</dt>
          <dd>{on.where}</dd>
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
