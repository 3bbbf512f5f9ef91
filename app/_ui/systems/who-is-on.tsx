import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import { OnLine } from '../rota/on-line';
import type { OnNowView } from '../rota/rota-view';

interface SiteOn {
  key: string;
  name: string;
  zone: string;
  on: OnNowView;
}

/** Who is on now at each site, leading to its rota. @param at   the instant, UTC, ISO */
export function WhoIsOn({ sites, at }: { sites: SiteOn[]; at: string }) {
  return sites.map(({ key, name, zone, on }) => (
    <OnLine
      key={key}
      site={<Link href={siteAddress(key, 'rota')}>{sites.length > 1 ? name : 'Rota'}</Link>}
      zone={zone}
      now={Date.parse(at)}
      view={on}
    />
  ));
}
