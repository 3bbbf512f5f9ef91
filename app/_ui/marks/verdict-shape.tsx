import type { Verdict } from '#core/review/result';
import style from './verdict.module.css';

/**
 * The shape of a verdict, readable without colour: the fuller the disc, the more of the week is lost; the diamond
 * gives no warning at all. Always beside its word, so hidden from screen readers.
 */
export function VerdictShape({ verdict }: { verdict: Verdict }) {
  return (
    <svg className={style.shape} data-verdict={verdict} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {drawn(verdict)}
    </svg>
  );
}

function drawn(verdict: Verdict) {
  switch (verdict) {
    case 'no-warning':
      return <path className={style.full} d="M8 .5 15.5 8 8 15.5.5 8Z" />;
    case 'too-late':
      return <circle className={style.full} cx="8" cy="8" r="6.25" />;
    case 'some-hours':
      return (
        <>
          <path className={style.full} d="M8 1.75a6.25 6.25 0 0 1 0 12.5Z" />
          <circle className={style.ring} cx="8" cy="8" r="6.25" />
        </>
      );
    case 'covered':
      return <circle className={style.ring} cx="8" cy="8" r="6.25" />;
    case 'dormant':
      return <circle className={style.dotted} cx="8" cy="8" r="6.25" />;
    case 'holds':
      return <path className={style.ring} d="M2 8h12" />;
    case 'not-assessed':
      return (
        <>
          <path className={style.ring} d="M5 5.6C5 3.7 6.3 2.7 8 2.7s3 1.1 3 2.7c0 2.2-3 2.3-3 4.6" />
          <circle className={style.dot} cx="8" cy="13" r="1.1" />
        </>
      );
  }
}
