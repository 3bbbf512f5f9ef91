import { lastingSaid } from '../states/state-view';
import style from './rota.module.css';

/** When nobody is on, in words. */
export function NobodyList({ nobody, zone }: { nobody: { from: number; to: number }[]; zone: string }) {
  if (nobody.length === 0) return <p>Somebody is on at every hour of the coming fortnight.</p>;
  const hours = nobody.reduce((sum, { from, to }) => sum + to - from, 0) / 3_600_000;
  return (
    <>
      <p>
        <span aria-hidden="true" className={style.mark}>
          ▲
        </span>{' '}
        <strong>{Math.round(hours * 10) / 10} hours</strong> of the coming fortnight have nobody, on site or on call. An
        alarm then waits for whoever comes next.
      </p>
      <ul className={style.nobodyList}>
        {nobody.map((span) => (
          <li key={span.from}>{spanSaid(span, zone)}</li>
        ))}
      </ul>
    </>
  );
}

function spanSaid({ from, to }: { from: number; to: number }, zone: string): string {
  const shown = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat('en-GB', { ...options, timeZone: zone });
  const day = shown({ weekday: 'long', day: 'numeric', month: 'short' });
  const time = shown({ hour: '2-digit', minute: '2-digit' });
  const [first, last] = [day.format(from), day.format(to)];
  const end = first === last ? time.format(to) : `${last}, ${time.format(to)}`;
  return `${first}, ${time.format(from)} to ${end} (${lastingSaid(Math.round((to - from) / 60_000))})`;
}
