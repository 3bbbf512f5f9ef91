import { Fold } from '../frame/fold';
import type { EntryView } from './record-view';
import { photoAddress } from '../rounds/round-view';
import style from './record.module.css';

/** What an entry says, and behind it all that was sealed. */
export function EntryDetail({ site, entry: { what, title, body, seal } }: { site: string; entry: EntryView }) {
  return (
    <div className={style.entry}>
      <Fold title={what}>
        <p>
          Kind: {title}. Seal: <code className={style.seal}>{seal}</code>
        </p>
        {typeof body.photo === 'string' ? (
          <p>
            <a href={photoAddress(site, body.photo)}>See the photo</a>
          </p>
        ) : null}
        <p>What was sealed, word for word: persons and things stand in it by their ids.</p>
        <pre className={style.body}>{JSON.stringify(body, null, 2)}</pre>
      </Fold>
    </div>
  );
}
