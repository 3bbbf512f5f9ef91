import { spareSaid } from './said';
import style from './cover.module.css';

/** Time to spare in words; below nothing with a shape before it. @param spareS s; −Infinity where nobody ever comes */
export function Spare({ spareS }: { spareS: number }) {
  if (spareS > 0) return <>{spareSaid(spareS)}</>;
  return (
    <span className={style.late}>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      {spareSaid(spareS)}
    </span>
  );
}
