import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import { instantSaid } from '../words/instant';
import style from './call-outs.module.css';
import type { CallOutView } from './call-outs-view';

/** Who is in alone, in a line each, with where to say that they are back. @param zone IANA zone of the site */
export function AloneNote({ site, zone, open }: { site: string; zone: string; open: readonly CallOutView[] }) {
  const place = siteAddress(site, 'call-outs');
  if (open.length === 0)
    return (
      <p>
        <Link href={place}>Going in alone</Link>
      </p>
    );
  return open.map(({ id, name, isOwn, state, until }) => (
    <p key={id} className={state === 'overdue' ? style.overdue : undefined}>
      <Link href={place}>
        {isOwn ? 'You are in alone' : `${name} is in alone`}
        {state === 'overdue' ? ', not back by ' : ', back by '}
        {instantSaid(until, zone)}
      </Link>
    </p>
  ));
}
