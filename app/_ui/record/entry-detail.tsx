import { Fold } from '../frame/fold';
import type { EntryView } from './record-view';
import style from './record.module.css';

/** What an entry says, and behind it all that was sealed. */
export function EntryDetail({ entry: { what, title, body, seal } }: { entry: EntryView }) {
  return (
    <div className={style.entry}>
      <Fold title={what}>
        <p>
          Kind: {title}. Seal: <code className={style.seal}>{seal}</code>
        </p>
        <p>What was sealed, word for word: persons and things stand in it by their ids.</p>
        <pre className={style.body}>{JSON.stringify(body, null, 2)}</pre>
      </Fold>
    </div>
  );
}
