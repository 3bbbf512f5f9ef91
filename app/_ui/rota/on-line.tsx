import type { ReactNode } from 'react';
import { ON_WORDS, type OnNowView, type OnPersonView, untilSaid } from './rota-view';
import style from './rota.module.css';

interface OnLineProps {
  /** Names the site, or leads to its rota. */
  site?: ReactNode;
  zone: string;
  now: number;
  view: OnNowView;
}

/** Who is on now, until when, and who comes next, in a line. That nobody is on is said with weight. */
export function OnLine({ site, zone, now, view: { on, next } }: OnLineProps) {
  const said = ({ name, kind, until }: OnPersonView) =>
    `${name} (${ON_WORDS[kind]}${until === null ? '' : ` until ${untilSaid(zone, until, now)}`})`;
  const [first] = next;
  return (
    <p className={style.on}>
      {site ? <>{site}: </> : null}
      {on.length > 0 ? (
        <>On now: {listed(on.map(said))}.</>
      ) : (
        <>
          <span aria-hidden="true" className={style.mark}>
            ▲
          </span>{' '}
          <strong>Nobody is on now.</strong>
        </>
      )}{' '}
      {first ? (
        <span className={style.next}>
          Next: {listed(next.map(({ name, kind }) => `${name}, ${ON_WORDS[kind]}`))}, from{' '}
          {untilSaid(zone, first.from, now)}.
        </span>
      ) : on.length === 0 ? (
        <span>Nobody comes on within eight days.</span>
      ) : null}
    </p>
  );
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
