import type { Custom } from '#core/units/shown';
import type { LineView } from './round-view';
import style from './rounds.module.css';
import { timeSaid } from '../words/moment';
import { qualitySaid, valueSaid } from './said';

/** What was recorded on a line: what stands, by whom and when, and before it what it corrects. */
export function EntryLog({ line, zone, units }: { line: LineView; zone: string; units: Custom }) {
  const stands = line.entries.at(-1);
  if (!stands) return <p className={style.soft}>Blank.</p>;
  const said = (entry: typeof stands) =>
    entry.value ? valueSaid(line.check, entry.value, units) : `Not done: ${entry.notDone ?? ''}`;
  const doubt = qualitySaid(stands.value);
  return (
    <div className={style.entered}>
      <p>
        {line.isAbnormal ? (
          <span aria-hidden="true" className={style.wrong}>
            ▲{' '}
          </span>
        ) : null}
        <strong>{said(stands)}</strong>
        {doubt ? `, ${doubt}` : null}
        <span className={style.soft}>
          {' '}
          {timeSaid(stands.at, zone)}, {stands.by}
        </span>
      </p>
      {stands.note ? <p>{stands.note}</p> : null}
      {line.entries.slice(0, -1).map((entry, index) => (
        <p key={entry.id} className={style.soft}>
          Before: <s>{said(entry)}</s> {entry.by}. Corrected: {line.entries[index + 1]?.reason}
        </p>
      ))}
    </div>
  );
}
