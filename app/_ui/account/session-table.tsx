import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import style from '../sign-in/sign-in.module.css';
import { type Column, Ledger } from '../table/ledger';
import { browserWords } from './browser-words';
import { Instant } from './instant';

/** A browser that is signed in. */
export interface Session {
  id: string;
  createdAt: Date;
  seenAt: Date;
  way: string;
  browser: string;
  isThis: boolean;
}

const WAYS: Record<string, string> = { password: 'password', passkey: 'passkey', outside: 'outside issuer' };

/**
 * The browsers one is signed in by.
 * @param end signs one out
 */
export function SessionTable({ sessions, end }: { sessions: Session[]; end: FormAction<unknown> }) {
  const columns: Column<Session>[] = [
    { id: 'browser', head: 'Browser', cell: ({ browser }) => browserWords(browser) },
    { id: 'way', head: 'By', cell: ({ way }) => WAYS[way] ?? way },
    { id: 'since', head: 'Since', cell: ({ createdAt }) => <Instant at={createdAt} /> },
    { id: 'seen', head: 'Last seen', cell: ({ seenAt }) => <Instant at={seenAt} /> },
    {
      id: 'end',
      head: 'End',
      cell: ({ id, isThis }) =>
        isThis ? (
          <em>this one</em>
        ) : (
          <div className={style.row}>
            <PersonForm send={end} hidden={{ id }} button="End it" look="plain" />
          </div>
        ),
    },
  ];
  return (
    <Ledger caption="Browsers, the one seen last first" columns={columns} rows={sessions} keyOf={({ id }) => id} />
  );
}
