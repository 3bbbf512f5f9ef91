import Link from '../frame/link';
import { AlarmStateMark } from './alarm-state';
import { type AlarmView, alarmAddress } from './alarm-view';

/** What explains an alarm, and what it explains. */
export interface CascadeView {
  cause: { id: string; name: string } | null;
  explains: { id: string; name: string; state: AlarmView['state']; again: number }[];
}

/** The first cause of an alarm, or what stands under it. */
export function AlarmCascade({ site, cause, explains }: CascadeView & { site: string }) {
  return (
    <>
      {cause === null ? null : (
        <p>
          First cause, as the description of the site explains it:{' '}
          <Link href={alarmAddress(site, cause.id)}>{cause.name}</Link>. Look at that first; this one is judged all the
          same.
        </p>
      )}
      {explains.length === 0 ? null : (
        <>
          <p>First cause of:</p>
          <ul>
            {explains.map(({ id, name, state }) => (
              <li key={id}>
                <Link href={alarmAddress(site, id)}>{name}</Link> <AlarmStateMark state={state} />
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
