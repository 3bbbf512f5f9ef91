import { type Column, Ledger } from '../table/ledger';
import type { MinutesView, RotaPersonView, RotaView } from './rota-view';
import style from './rota.module.css';

/** The people of a rota: how soon each can be there, and whether an alarm reaches them. */
export function PeopleTable({ people, isMailed }: Pick<RotaView, 'people' | 'isMailed'>) {
  const columns: Column<RotaPersonView>[] = [
    {
      id: 'name',
      head: 'Who',
      cell: ({ name, isOnShift }) => (
        <>
          {name}
          {isOnShift ? null : <span className={style.about}>in no shift</span>}
        </>
      ),
    },
    { id: 'onSite', head: 'Answers on site in', figure: true, cell: ({ onSite }) => minutesSaid(onSite) },
    { id: 'travel', head: 'Way to the site', figure: true, cell: ({ travel }) => minutesSaid(travel) },
    { id: 'onCall', head: 'There from home in', figure: true, cell: ({ onCall }) => minutesSaid(onCall) },
    { id: 'reached', head: 'Reached by', cell: ({ account }) => <Reached account={account} isMailed={isMailed} /> },
  ];
  return (
    <>
      {isMailed ? null : (
        <p>
          <Mark /> <strong>Nobody is mailed of an alarm: Holdfast has no mail server.</strong> Whoever looks after the
          machine names one. Until then an alarm is seen only by those who have its page open.
        </p>
      )}
      <Ledger
        caption="Figures marked “default” were entered by nobody. An alarm reaches only those who can be mailed."
        columns={columns}
        rows={people}
        keyOf={({ key }) => key}
      />
    </>
  );
}

function minutesSaid({ value, isDefault }: MinutesView): string {
  return `${value}\u00a0min${isDefault ? ', default' : ''}`;
}

function Reached({ account, isMailed }: { account: RotaPersonView['account']; isMailed: boolean }) {
  // That there is no mail server stands above the table, once for all.
  if (account === 'mailed') return <>{isMailed ? 'mail' : 'mail, once there is a mail server'}</>;
  return (
    <>
      <Mark /> <strong>nothing</strong>:{' '}
      {account === 'none' ? 'no account is linked to them' : 'their account has no address'}
    </>
  );
}

function Mark() {
  return (
    <span aria-hidden="true" className={style.mark}>
      ▲
    </span>
  );
}
