import { type Column, Ledger } from '../table/ledger';
import { Mark } from './change-effect';
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
    { id: 'reached', head: 'Reached by', cell: (person) => <Reached person={person} isMailed={isMailed} /> },
    ...(people.some(({ competences }) => competences.length > 0) ? [MAY] : []),
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

/** What each may do of the work that not everybody may, until when and on whose word. */
const MAY: Column<RotaPersonView> = {
  id: 'may',
  head: 'May',
  cell: ({ competences }) => (
    <>
      {competences.map(({ name, until, attestedBy, isOver }) => (
        <span key={name} className={style.may}>
          {isOver ? <Mark /> : null} {name}
          <span className={style.about}>
            {until === null ? 'without an end' : isOver ? `ran out on ${until}` : `until ${until}`}
            {attestedBy === null ? '' : `, attested by ${attestedBy}`}
          </span>
        </span>
      ))}
    </>
  ),
};

function Reached({ person: { account, devices }, isMailed }: { person: RotaPersonView; isMailed: boolean }) {
  // That there is no mail server stands above the table, once for all.
  const push = devices === 0 ? '' : devices === 1 ? 'a browser' : `${devices} browsers`;
  if (account === 'mailed')
    return (
      <>
        {push === '' ? '' : `${push}, `}
        {isMailed ? 'mail' : 'mail, once there is a mail server'}
      </>
    );
  if (push !== '') return <>{push}</>;
  return (
    <>
      <Mark /> <strong>nothing</strong>:{' '}
      {account === 'none' ? 'no account is linked to them' : 'their account has no address'}
    </>
  );
}
