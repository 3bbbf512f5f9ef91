import type { Custom } from '#core/units/shown';
import { type EntryView, type LineView, photoAddress, type RoundView } from './round-view';
import style from './rounds.module.css';
import { timeSaid } from '../words/moment';
import { qualitySaid, valueSaid } from './said';

interface EntryLogProps {
  line: LineView;
  site: RoundView['site'];
  units: Custom;
}

/** What was recorded on a line: what stands, by whom and when, what was recorded beside it, and what it corrects. */
export function EntryLog({ line, site, units }: EntryLogProps) {
  const stands = line.entries.at(-1);
  if (!stands) return <p className={style.soft}>Blank.</p>;
  const said = (entry: EntryView) =>
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
        {doubt ? `, ${doubt}` : null} <Made entry={stands} zone={site.zone} />
      </p>
      {stands.note ? <p>{stands.note}</p> : null}
      <Photos site={site.key} entry={stands} />
      {line.entries.slice(0, -1).map((entry) => (
        <Earlier key={entry.id} line={line} entry={entry} said={said(entry)} site={site} />
      ))}
    </div>
  );
}

/** An entry that does not stand first: one that was corrected, or that somebody else made of the same line. */
function Earlier({
  line,
  entry,
  said,
  site,
}: {
  line: LineView;
  entry: EntryView;
  said: string;
  site: EntryLogProps['site'];
}) {
  const correction = line.entries.find(({ supersedes }) => supersedes === entry.id);
  if (correction)
    return (
      <p className={style.soft}>
        Before: <s>{said}</s> {entry.by}. Corrected: {correction.reason}
      </p>
    );
  return (
    <>
      <p className={style.soft}>
        Also entered: {said} <Made entry={entry} zone={site.zone} />
        {entry.note ? `. ${entry.note}` : null}
      </p>
      <Photos site={site.key} entry={entry} />
    </>
  );
}

function Made({ entry: { at, by, clockOffS }, zone }: { entry: EntryView; zone: string }) {
  return (
    <span className={style.soft}>
      {timeSaid(at, zone)}, {by}
      {clockOffS === null ? null : `, by a clock that was ${offSaid(clockOffS)}`}
    </span>
  );
}

const MINUTE_S = 60;

function offSaid(clockOffS: number): string {
  return `${Math.round(Math.abs(clockOffS) / MINUTE_S)} min ${clockOffS > 0 ? 'fast' : 'slow'}`;
}

function Photos({ site, entry }: { site: string; entry: EntryView }) {
  if (entry.photos.length === 0) return null;
  return (
    <p className={style.photos}>
      {entry.photos.map((photo, index) => (
        <a key={photo} className={style.go} href={photoAddress(site, photo)}>
          <svg className={style.photo} viewBox="0 0 96 96" aria-hidden="true" focusable="false">
            <image href={photoAddress(site, photo)} width="96" height="96" preserveAspectRatio="xMidYMid slice" />
          </svg>
          Photo {index + 1}
        </a>
      ))}
    </p>
  );
}
