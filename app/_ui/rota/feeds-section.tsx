'use client';

import type { FormAction } from '../form/answer';
import { ActForm } from '../people/act-form';
import { momentSaid } from '../words/moment';
import type { FeedView } from './rota-view';
import style from './rota.module.css';

interface FeedsProps {
  site: string;
  zone: string;
  feeds: FeedView[];
  isOnRota: boolean;
  make: FormAction<{ address: string }>;
  end: FormAction<unknown>;
}

const SCOPES = { mine: 'my own shifts', everybody: 'everybody’s shifts', rounds: 'when rounds are due' } as const;

/** Addresses by which one's own calendar reads the rota: made here, shown once, and ended here. */
export function FeedsSection({ site, zone, feeds, isOnRota, make, end }: FeedsProps) {
  return (
    <>
      <p>
        An address that a calendar on your phone or desk can read by itself. Whoever has it sees who is on, or when
        rounds are due, and nothing of any alarm; it opens nothing once you end it, or once your access here ends.
        Calendars ask when they like: what is on this page counts.
      </p>
      <ul className={style.feeds}>
        {feeds.map(({ id, scope, createdAt }) => (
          <li key={id}>
            <span>
              {SCOPES[scope]}, made {momentSaid(createdAt, zone)}
            </span>
            <ActForm
              action={end}
              hidden={{ site, feed: id }}
              button="End it"
              done={() => <p>It opens nothing now.</p>}
            />
          </li>
        ))}
      </ul>
      <ActForm
        action={make}
        hidden={{ site }}
        button="Make an address"
        done={({ address }) => (
          <p>
            Add this address as a calendar to subscribe to. It is shown only now:{' '}
            <code className={style.address}>{address}</code>
          </p>
        )}
      >
        <fieldset className={style.choice}>
          <legend>Which shifts</legend>
          <label>
            <input type="radio" name="scope" value="mine" defaultChecked={isOnRota} disabled={!isOnRota} required /> my
            own
            {isOnRota ? '' : ' (your account is nobody of this rota)'}
          </label>
          <label>
            <input type="radio" name="scope" value="everybody" defaultChecked={!isOnRota} required /> everybody’s
          </label>
          <label>
            <input type="radio" name="scope" value="rounds" required /> none, but when rounds are due
          </label>
        </fieldset>
      </ActForm>
    </>
  );
}
