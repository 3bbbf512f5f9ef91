import { CHANNEL_WORDS } from '#core/alarms/channels';
import { type AlarmView, CALL_WORDS, WHY_TOLD } from './alarm-view';
import style from './alarms.module.css';

/** Who was told of an alarm, and how that went. */
export function ToldList({ alarm: { told, definition, state, causeId } }: { alarm: AlarmView }) {
  if (definition.answeredBy === 'nobody') return <>nobody: it is to be answered by nobody</>;
  if (told.length === 0 && state.startsWith('suppressed')) return <>nobody: it calls nobody just now</>;
  if (told.length === 0 && causeId !== null) return <>nobody by itself: its first cause calls</>;
  if (told.length === 0) return <Unreached>nobody: no account at this site could be told</Unreached>;
  const isWanted = state === 'unacknowledged' || state === 'returned' || state === 'latched-unacknowledged';
  return (
    <ul className={style.told}>
      {told.map((one) => (
        <li key={`${one.again} ${one.step} ${one.name} ${one.channel}`}>
          {one.name} ({WHY_TOLD[one.why]}), {CHANNEL_WORDS[one.channel].name}:{' '}
          {isWanted && (one.state === 'no-way' || one.state === 'failing') ? (
            <>
              <Unreached>{CALL_WORDS[one.state]}</Unreached>
              {one.detail === null ? '' : `: ${one.detail}`}
            </>
          ) : (
            CALL_WORDS[one.state]
          )}
        </li>
      ))}
    </ul>
  );
}

function Unreached({ children }: { children: string }) {
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>{children}</strong>
    </>
  );
}
