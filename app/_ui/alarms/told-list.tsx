import { CHANNEL_WORDS } from '#core/alarms/channels';
import type { CallState } from '#core/alarms/told';
import { instantSaid } from '../words/instant';
import { type AlarmView, CALL_WORDS, type SiteView, type ToldView, WHY_TOLD } from './alarm-view';
import style from './alarms.module.css';

interface ToldListProps {
  alarm: AlarmView;
  site: SiteView;
}

/** Who was told of an alarm, and how that went: the newest first, and what did not reach anybody marked. */
export function ToldList({ alarm, site }: ToldListProps) {
  const { told, definition, state } = alarm;
  if (definition.answeredBy === 'nobody') return <>nobody: it is to be answered by nobody</>;
  if (told.length === 0) return <NobodyTold alarm={alarm} />;
  const isWanted = state === 'unacknowledged' || state === 'returned' || state === 'latched-unacknowledged';
  return (
    <ol className={style.told}>
      {told.map((one) => (
        <li key={`${one.again} ${one.from} ${one.channel} ${one.names.join(' ')}`}>
          <span className={style.when}>{whenSaid(one, site)}</span>
          <span>
            {one.names.join(', ')} ({WHY_TOLD[one.why]}), {CHANNEL_WORDS[one.channel].name}:{' '}
            <Ended call={one} isWanted={isWanted} />
          </span>
        </li>
      ))}
    </ol>
  );
}

function NobodyTold({ alarm: { state, causeId, calledBy } }: Pick<ToldListProps, 'alarm'>) {
  if (state.startsWith('suppressed')) return <>nobody: it calls nobody just now</>;
  if (calledBy.detail.late === true) return <>{lateSaid(state)}</>;
  if (causeId !== null) return <>nobody by itself: its first cause calls</>;
  return <Unreached>nobody: no account at this site could be told</Unreached>;
}

/** Nobody is woken for what was over before it was known of. */
function lateSaid(state: AlarmView['state']): string {
  return state === 'unacknowledged' || state === 'latched-unacknowledged'
    ? 'nobody yet: it was raised by what came late, and calls after a minute unless what comes next says that it is over. Where this stands for longer, no account at this site could be told'
    : 'nobody: it was raised by what came late, and was over or acknowledged before it would have called';
}

/** "02:10 to 05:40, 14 times"; on the wall clock of the site, with the day where it ended on another. */
function whenSaid({ from, to, times }: ToldView, { zone }: SiteView): string {
  if (times === 1) return instantSaid(to, zone);
  const [first, last] = [instantSaid(from, zone), instantSaid(to, zone)];
  const [day, time = ''] = last.split(', ');
  return `${first} to ${first.startsWith(`${day},`) ? time : last}, ${times} times`;
}

function Ended({ call: { state, detail, isCalledSince }, isWanted }: { call: ToldView; isWanted: boolean }) {
  const isFailure = state === 'no-way' || state === 'failing';
  if (!(isFailure || (isCalledSince && state === 'waiting'))) return <>{CALL_WORDS[state]}</>;
  const words = (isCalledSince && CALLED_SINCE[state]) || CALL_WORDS[state];
  return (
    <>
      {isWanted ? <Unreached>{words}</Unreached> : words}
      {detail === null ? '' : `: ${detail}`}
    </>
  );
}

/** The same of whom was called since in the same way: nothing more is tried for that call. */
const CALLED_SINCE: Readonly<Partial<Record<CallState, string>>> = {
  failing: 'failed',
  'no-way': 'could not be told',
  waiting: 'not sent before the next call',
};

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
