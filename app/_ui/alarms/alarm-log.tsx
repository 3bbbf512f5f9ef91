import { CHANNEL_WORDS, type Channel } from '#core/alarms/channels';
import type { AlarmChange } from '#core/alarms/life/machine';
import type { ToTell } from '#core/alarms/to-tell';
import type { Custom } from '#core/units/shown';
import { browserWords } from '../account/browser-words';
import { instantSaid } from '../words/instant';
import { type AlarmView, type SiteView, valueSaid, WHY_TOLD } from './alarm-view';
import style from './alarms.module.css';
import { recalledSaid, suppressedSaid, unsuppressedSaid } from './life-words';

type LifeEventKind = AlarmChange | 'acknowledged-too' | 'noted' | 'escalated' | 'reset-refused' | 'unfolded';

/** Something in the life of an alarm. Instants in ISO, UTC. */
export type LogLineView =
  | { what: 'began'; at: string; value: number | null; by: string | null }
  | {
      what: LifeEventKind;
      at: string;
      by: string | null;
      from: string | null;
      note: string | null;
      detail: Record<string, unknown>;
    }
  | { what: 'called'; at: string; names: string[]; channel: Channel; why: ToTell['why']; step: number }
  | {
      what: 'attempt';
      at: string;
      names: string[];
      channel: Channel;
      result: 'taken' | 'failed' | 'no-way';
      detail: string | null;
    };

interface AlarmLogProps {
  alarm: AlarmView;
  log: LogLineView[];
  site: SiteView;
  units: Custom;
}

/** The life of an alarm as a log, time at the left. */
export function AlarmLog({ alarm, log, site, units }: AlarmLogProps) {
  return (
    <ol className={style.log}>
      {log.map((line) => (
        <li key={keyOf(line)}>
          <time dateTime={line.at}>{instantSaid(line.at, site.zone)}</time>
          <div>
            <LineSaid line={line} alarm={alarm} site={site} units={units} />
          </div>
        </li>
      ))}
    </ol>
  );
}

/** Nothing of one kind happens twice at one instant by one person. */
function keyOf(line: LogLineView): string {
  const who = 'names' in line ? `${line.names.join(' ')} ${line.channel}` : 'by' in line ? (line.by ?? '') : '';
  return `${line.at} ${line.what} ${who}`;
}

interface LineSaidProps extends Omit<AlarmLogProps, 'log'> {
  line: LogLineView;
}

function LineSaid({ line, alarm, site, units }: LineSaidProps) {
  switch (line.what) {
    case 'began':
      return (
        <>
          {beganSaid(line.value, alarm, units)}
          {line.by === null ? '' : `, read by ${line.by} on a round`}
        </>
      );
    case 'raised':
      return line.by !== null ? <Person line={line} /> : <strong>{raisedSaid(line.detail)}</strong>;
    case 'raised-again':
      return <strong>Raised again before it was reset</strong>;
    case 'recalled':
      return <strong>{recalledSaid(line.detail, alarm.definition, units)}</strong>;
    case 'suppressed':
      return <>{suppressedSaid(line.detail, site)}</>;
    case 'unsuppressed':
      return <>{unsuppressedSaid(line.detail)}</>;
    case 'unfolded':
      return <strong>Calls by itself: its first cause no longer does</strong>;
    case 'returned':
      if (line.by !== null) return <Person line={line} />;
      return <>{returnedSaid(line.detail, alarm, units)}</>;
    case 'escalated':
      return <>{escalatedSaid(line.detail)}</>;
    case 'called':
      return (
        <>
          {line.names.join(', ')}: to be told by {CHANNEL_WORDS[line.channel].name} ({WHY_TOLD[line.why]})
        </>
      );
    case 'attempt':
      return <>{attemptSaid(line)}</>;
    case 'acknowledged':
    case 'acknowledged-too':
    case 'noted':
    case 'reset':
    case 'reset-refused':
      return <Person line={line} />;
  }
}

function beganSaid(value: number | null, { definition }: AlarmView, units: Custom): string {
  if (definition.on.kind === 'by-hand') return 'It was seen';
  if (definition.on.kind === 'silent' || definition.on.kind === 'silent-sensor') return 'The last word that came';
  return value === null ? 'It began' : `It began: ${valueSaid(definition, value, units)}`;
}

function raisedSaid({ folded, late }: Record<string, unknown>): string {
  const how = late === true ? 'Raised, by what came late' : 'Raised';
  return folded === undefined ? how : `${how}, and folded under its first cause`;
}

function returnedSaid(detail: Record<string, unknown>, { definition }: AlarmView, units: Custom): string {
  if (detail.why === 'retired') return 'Ended: the alarm was retired';
  if (detail.why === 'definition-changed') return 'Ended: what it watches was changed, and it began anew';
  return typeof detail.value === 'number'
    ? `Back to normal: ${valueSaid(definition, detail.value, units)}`
    : 'Back to normal';
}

function escalatedSaid({ why, told, repeated }: Record<string, unknown>): string {
  if (why === 'late') return 'Called now: nothing that came since says that it is over';
  const reason =
    why === 'nobody-on'
      ? 'nobody was on'
      : why === 'no-account'
        ? 'nobody who was to answer has an account'
        : 'nobody had acknowledged it';
  const whom = repeated === true ? 'The people of the last step called once more' : 'The next people called';
  return `${whom}, because ${reason}${told === 0 ? '; there is none who could be told' : ''}`;
}

function attemptSaid({ names, channel, result, detail }: Extract<LogLineView, { what: 'attempt' }>): string {
  const { name: way, taken } = CHANNEL_WORDS[channel];
  const name = names.join(', ');
  if (result === 'taken') return `To ${name} by ${way}: ${taken}${detail === null ? '' : ` (${detail})`}`;
  return `${name} could not be told by ${way}${detail === null ? '' : `: ${detail}`}`;
}

const DID: Readonly<Partial<Record<LogLineView['what'], string>>> = {
  raised: 'called for help',
  returned: 'said that it is right again',
  acknowledged: 'acknowledged',
  'acknowledged-too': 'acknowledged as well',
  noted: 'noted',
  reset: 'reset it',
  'reset-refused': 'tried to reset it, while what it watches still held',
};

function Person({ line }: { line: Extract<LogLineView, { note: string | null }> }) {
  const { what, by, from, note, detail } = line;
  const place = detail.page === 'list' ? 'on the list of alarms' : detail.page === 'alarm' ? 'on this page' : '';
  const where = [from === null ? '' : `from ${browserWords(from)}`, place].filter(Boolean).join(', ');
  return (
    <>
      <strong>
        {by ?? 'Somebody'} {DID[what]}
      </strong>
      {where === '' ? '' : ` (${where})`}
      {note === null ? null : <p className={style.note}>{note}</p>}
    </>
  );
}
