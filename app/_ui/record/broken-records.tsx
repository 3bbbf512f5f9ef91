import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import style from './record.module.css';

interface BrokenView {
  site: { key: string; name: string };
  seq: number;
  wrong: string;
}

/** A warning for each record that was found broken; nothing while all are whole. */
export function BrokenRecords({ records }: { records: BrokenView[] }) {
  return records.map(({ site, seq, wrong }) => (
    <p key={site.key} role="alert" className={style.broken}>
      <span aria-hidden="true">▲ </span>
      <strong>The record of {site.name} is broken</strong> at entry {seq}: {wrong}. What it says from there on may not
      be what happened. <Link href={siteAddress(site.key, 'record', 'anchors')}>When it was found</Link>
    </p>
  ));
}
