import { Page } from '../frame/page';
import type { Line } from './use-kept';
import style from './walk.module.css';

interface NotHereProps {
  site: string;
  line: Line;
  others: number;
  meet: () => Promise<void>;
}

/** Nothing is kept here for whoever is there, and why. */
export function NotHere({ site, line, others, meet }: NotHereProps) {
  return (
    <Page title="Rounds">
      <p role="status">{said(line)}</p>
      {line.state === 'not-signed-in' ? (
        <p>
          {/* A whole page is left, so that what it holds of somebody is gone. */}
          <a
            className={style.go}
            href={`/sign-in?to=${encodeURIComponent(`/sites/${encodeURIComponent(site)}/rounds`)}`}
          >
            Sign in
          </a>
        </p>
      ) : null}
      {others > 0 ? (
        <p>
          {others === 1 ? 'One entry of somebody waits' : `${others} entries of somebody wait`} on this telephone, to be
          sent once whoever made {others === 1 ? 'it' : 'them'} signs in here again, and shown to nobody else.
        </p>
      ) : null}
      {line.state === 'asking' ? null : (
        <button type="button" className={style.main} onClick={() => void meet()}>
          Try again
        </button>
      )}
    </Page>
  );
}

function said({ state, said: why }: Line): string {
  switch (state) {
    case 'asking':
    case 'reached':
      return 'Fetching the rounds…';
    case 'unreached':
      return 'There is no signal, and no rounds of this site are kept here. Open this page once where there is one, signed in.';
    case 'not-signed-in':
      return 'Sign in to walk rounds: nothing is shown here before.';
    case 'refused':
      return why ?? 'These rounds are not for you.';
  }
}
