import type { AlarmState } from '#core/alarms/life/machine';
import style from './alarms.module.css';

/** What a state is called. */
const STATE_WORDS: Readonly<Record<AlarmState, string>> = {
  unacknowledged: 'Not acknowledged',
  'latched-unacknowledged': 'Latched: back to normal, not acknowledged',
  acknowledged: 'Acknowledged, still active',
  'latched-acknowledged': 'Latched: back to normal, to be reset',
  returned: 'Back to normal, not acknowledged',
  suppressed: 'Active, and calls nobody',
  'suppressed-latched-unacknowledged': 'Latched, and calls nobody',
  'suppressed-latched-acknowledged': 'Latched, to be reset, and calls nobody',
  over: 'Over',
};

/** The state of an alarm: a shape, a word and, where it is abnormal, colour. */
export function AlarmStateMark({ state, isEnded = false }: { state: AlarmState; isEnded?: boolean }) {
  const word = isEnded && state === 'returned' ? 'Ended, not acknowledged' : STATE_WORDS[state];
  return (
    <span className={style.state} data-state={state}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
        {drawn(state)}
      </svg>
      {word}
    </span>
  );
}

/** Full while nobody has seen it, hollow once somebody has; a ring once it is back, barred while it is latched; crossed out while it calls nobody. */
function drawn(state: AlarmState) {
  switch (state) {
    case 'unacknowledged':
      return <path className={style.full} d="M8 1.25 15.25 14.5H.75Z" />;
    case 'acknowledged':
      return <path className={style.ring} d="M8 2.5 14.25 13.75H1.75Z" />;
    case 'returned':
      return <circle className={style.ring} cx="8" cy="8" r="6" />;
    case 'latched-unacknowledged':
      return <path className={style.full} d="M2 8a6 6 0 1 0 12 0ZM2 6.5V5a6 6 0 0 1 12 0v1.5Z" />;
    case 'latched-acknowledged':
      return <path className={style.ring} d="M14 8A6 6 0 1 1 2 8a6 6 0 1 1 12 0ZM2 8h12" />;
    case 'suppressed':
    case 'suppressed-latched-unacknowledged':
    case 'suppressed-latched-acknowledged':
      return <path className={style.ring} d="M2 2h12v12H2ZM2 14 14 2" />;
    case 'over':
      return <path className={style.ring} d="M2 8h12" />;
  }
}
