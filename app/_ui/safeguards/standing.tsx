import type { LineView } from './safeguard-view';
import style from './safeguards.module.css';

/** How a safeguard stands: a shape and a word, and for one that is off until when. */
export function Standing({ line: { state, off } }: { line: LineView }) {
  if (state === 'tested') return <>tested</>;
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        {state === 'off' ? '✕' : '▲'}
      </span>{' '}
      <strong>{state}</strong>
      {state === 'off' && off ? ` until ${off.until}` : ''}
    </>
  );
}

/** When a safeguard has to be tested again. @param today ISO date at the site */
export function dueSaid({ due, last }: LineView, today: string): string {
  if (due !== null) return due < today ? `${due}, overdue` : due;
  return last === null ? 'now, never tested' : 'now, it failed';
}

/** Its latest test in a few words. */
export function lastSaid({ last }: LineView): string {
  return last ? `${last.on}, ${last.result}` : 'none';
}
