import { momentSaid, timeSaid } from '../words/moment';
import type { Item, Kept } from './store';
import type { Line } from './use-kept';
import type { Ready } from './use-offline';
import style from './walk.module.css';

const READY: Readonly<Record<Ready, string>> = {
  asking: 'This telephone is getting ready to go without a signal…',
  ready: 'This page is kept here: it opens without a signal.',
  'not-secure':
    'This page cannot be kept here: open Holdfast by https, or on the machine it runs on. What is entered is kept while this page stays open.',
  no: 'This browser does not keep this page: without a signal, do not close or reload it.',
};

interface KeptHereProps {
  kept: Kept;
  unsent: { entries: number; photos: number } | null;
  others: number;
  line: Line;
  meet: () => Promise<void>;
  ready: Ready;
}

/** What has not been sent yet, in a count; what was refused, and why; of when what is shown is. */
export function KeptHere({ kept, unsent, others, line, meet, ready }: KeptHereProps) {
  const { pack } = kept;
  const refused = [...kept.items, ...kept.photos].filter(({ state }) => state === 'refused');
  const told = kept.items.filter(({ state, said }) => state === 'kept' && said !== null);
  const zone = pack?.site.zone ?? 'UTC';
  return (
    <section aria-label="What is kept on this telephone" className={style.kept}>
      <p role="status">
        <strong>{unsentSaid(unsent)}</strong> {lineSaid(line, zone)}{' '}
        <button type="button" className={style.plain} onClick={() => void meet()}>
          Try now
        </button>
      </p>
      <NotCalled items={kept.items} />
      <p className={style.soft}>
        {pack ? `As of ${momentSaid(pack.at, zone)}. ` : null}
        {READY[ready]}
        {others > 0
          ? ` ${others === 1 ? 'One entry of somebody else waits' : `${others} entries of somebody else wait`} here until they sign in again.`
          : null}
      </p>
      {refused.length > 0 ? (
        <div role="alert" className={style.refused}>
          <p>
            <span aria-hidden="true">✕</span> <strong>Not taken: {refused.length}.</strong> Each stays here. See it
            through online, where the round is.
          </p>
          <ul>
            {refused.map((item) => (
              <li key={item.id}>
                {'kind' in item ? named(item) : 'A photo'}: {item.said}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {told.length > 0 ? (
        <ul className={style.soft}>
          {told.map((item) => (
            <li key={item.id}>
              {named(item)}: {item.said}
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

/** Calls for help that have not gone out: nobody comes for them. */
function NotCalled({ items }: { items: readonly Item[] }) {
  const calls = items.filter(({ kind, state }) => kind === 'call' && state === 'waiting');
  if (calls.length === 0) return null;
  return (
    <div role="alert" className={style.refused}>
      <p>
        <span aria-hidden="true">▲</span> <strong>Nobody has been called yet</strong> for: {calls.map(named).join('; ')}
        . Without a signal nobody is called: go to a telephone, or to where there is one.
      </p>
    </div>
  );
}

function named(item: Item): string {
  switch (item.kind) {
    case 'entry':
      return item.line.what;
    case 'sign':
      return `Signature of ${item.walk.name}`;
    case 'call':
      return item.what;
  }
}

/** What has not been sent yet, in words. */
function unsentSaid(unsent: KeptHereProps['unsent']): string {
  if (!unsent || unsent.entries + unsent.photos === 0) return 'Everything is sent.';
  const photos = unsent.photos === 0 ? '' : `, photos: ${unsent.photos}`;
  return `Not sent yet: ${unsent.entries}${photos}.`;
}

function lineSaid({ state, said, atMs }: Line, zone: string): string {
  const at = atMs === null ? '' : ` (tried ${timeSaid(atMs, zone)})`;
  switch (state) {
    case 'asking':
      return 'Asking Holdfast…';
    case 'reached':
      return '';
    case 'unreached':
      return `No signal${at}: go on, it is kept here.`;
    case 'not-signed-in':
    case 'refused':
      return `${said ?? ''}${at}`;
  }
}
