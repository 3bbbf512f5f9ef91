import { instantSaid } from '../words/instant';
import style from './room-note.module.css';

/** What of Holdfast itself does not do its work. Instants in UTC, ISO; null: never. */
export interface WatchView {
  kind: 'not-judged' | 'mail';
  since: string | null;
}

/** Stands on every page while nobody would be called; nothing otherwise. */
export function WatchNote({ watch }: { watch: WatchView | null }) {
  if (watch === null) return null;
  const since = watch.since === null ? '' : ` since ${instantSaid(watch.since, 'UTC')} UTC`;
  return (
    <aside className={style.note} aria-label="Holdfast itself">
      <p>
        <strong>
          {watch.kind === 'not-judged'
            ? `Alarms are not being judged${since}.`
            : `The mail server takes no mail${since}.`}
        </strong>{' '}
        {watch.kind === 'not-judged'
          ? 'Nothing new would be raised, and nobody would be called. Walk the rounds, and tell whoever looks after Holdfast.'
          : 'Nobody is told by e-mail. Tell whoever looks after Holdfast.'}
      </p>
    </aside>
  );
}
