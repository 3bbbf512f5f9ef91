import { spanSaid } from './span-said';
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
