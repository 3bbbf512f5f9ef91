import { CHANNEL_WORDS } from '#core/alarms/channels';
import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import style from './calls.module.css';
import { type CalledView, type CallsView, STATE_WORDS } from './calls-view';

/** Who was reached when, and by what. @param call has somebody called for a test */
export function PeopleCalled({ page, call }: { page: CallsView; call: FormAction<unknown> }) {
  const { site, people } = page;
  if (people.length === 0) return <p>Nobody.</p>;
  return (
    <Ledger
      caption={`Times are those of ${site.zone}.`}
      columns={columnsOf(page, call)}
      rows={people}
      keyOf={({ account }) => account}
    />
  );
}

function columnsOf({ site, mayAnswer, mayCallOthers }: CallsView, call: FormAction<unknown>): Column<CalledView>[] {
  const said = (at: string) => instantSaid(at, site.zone);
  return [
    { id: 'name', head: 'Who', cell: ({ name, role }) => `${name}, ${role === 'admin' ? 'administrator' : role}` },
    {
      id: 'ways',
      head: 'Ways',
      cell: ({ ways }) =>
        ways.length === 0 ? <Wanting>none</Wanting> : ways.map((way) => CHANNEL_WORDS[way].name).join(', '),
    },
    {
      id: 'state',
      head: 'State',
      cell: ({ state }) =>
        state === 'reached' || state === 'asked' ? STATE_WORDS[state] : <Wanting>{STATE_WORDS[state]}</Wanting>,
    },
    { id: 'last', head: 'Last reached', cell: (one) => lastSaid(one, said) },
    { id: 'test', head: 'Last test call', cell: ({ testAt }) => (testAt === null ? 'none' : said(testAt)) },
    {
      id: 'call',
      head: 'Test',
      cell: ({ account, name, isYou }) =>
        (isYou && mayAnswer) || mayCallOthers ? (
          <PersonForm
            send={call}
            hidden={{ site: site.key, account }}
            button={`Test call to ${isYou ? 'yourself' : name}`}
            look="plain"
            done="Called."
          />
        ) : (
          '–'
        ),
    },
  ];
}

function lastSaid({ reachedAt, reachedBy, channel }: CalledView, said: (at: string) => string): string {
  if (reachedAt === null) return 'never';
  const by =
    reachedBy === 'alarm' ? 'acknowledged an alarm' : channel ? `test by ${CHANNEL_WORDS[channel].name}` : 'test';
  return `${said(reachedAt)}, ${by}`;
}

function Wanting({ children }: { children: string }) {
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>{children}</strong>
    </>
  );
}
