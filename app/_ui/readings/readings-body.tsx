import Link from '../frame/link';
import { readingSaid, type SeriesQuantity } from '#core/readings/figures';
import type { Origin, Quality } from '#core/readings/reading';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import { instantSaid } from '../words/instant';
import { QualityMark } from './quality';
import { ago, ORIGIN_WORDS, QUANTITY_WORDS, sensorAddress } from './words';
import style from './readings.module.css';

interface NewestView {
  at: string;
  ageS: number;
  /** Too old to say how things stand. */
  isStale: boolean;
  value: number;
  quality: Quality;
  why: string | null;
  origin: Origin;
  /** s it was on its way, of one that came late. */
  lateS: number | null;
}

interface SensorView {
  key: string;
  name: string;
  quantity: SeriesQuantity;
  isDerived: boolean;
  newest: NewestView | null;
}

export interface ReadingsView {
  site: { key: string; name: string; zone: string };
  systems: { key: string; name: string; sensors: SensorView[] }[];
  mayTakeIn: boolean;
  maySetSources: boolean;
}

/** What every sensor of a site read last, system by system. */
export function ReadingsBody({ view, units }: { view: ReadingsView; units: Custom }) {
  const { site, systems } = view;
  const hasAny = systems.some(({ sensors }) => sensors.some(({ newest }) => newest !== null));
  return (
    <Page
      title="Readings"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={<p>The newest reading of each sensor. Times are those of {site.zone}.</p>}
    >
      <Ways view={view} />
      {systems.length === 0 ? <p>No sensor is described yet. Describe one, and its readings will stand here.</p> : null}
      {systems.length > 0 && !hasAny ? (
        <p>No reading has come yet. Let a gateway send readings, or take in the file of a logger.</p>
      ) : null}
      {systems.map((system) => (
        <div key={system.key} className={style.system}>
          <Ledger
            caption={<h2>{system.name}</h2>}
            columns={columnsFor(site, system.key, units)}
            rows={system.sensors}
            keyOf={({ key }) => key}
          />
        </div>
      ))}
    </Page>
  );
}

function Ways({ view: { site, mayTakeIn, maySetSources } }: { view: ReadingsView }) {
  const ways = [
    ...(mayTakeIn ? [{ end: 'take-in', name: 'Take in the file of a logger' }] : []),
    ...(maySetSources ? [{ end: 'sources', name: 'Sources that send readings' }] : []),
  ];
  if (ways.length === 0) return null;
  return (
    <ul className={style.ways}>
      {ways.map(({ end, name }) => (
        <li key={end}>
          <Link href={siteAddress(site.key, 'readings', end)}>{name}</Link>
        </li>
      ))}
    </ul>
  );
}

function columnsFor(site: ReadingsView['site'], system: string, units: Custom): Column<SensorView>[] {
  return [
    {
      id: 'sensor',
      head: 'Sensor',
      cell: ({ key, name, quantity, isDerived }) => (
        <>
          <Link href={sensorAddress(site.key, system, key)}>{name}</Link>
          <span className={style.about}>
            {isDerived ? 'derived: ' : ''}
            {QUANTITY_WORDS[quantity]}
          </span>
        </>
      ),
    },
    {
      id: 'value',
      head: 'Newest reading',
      figure: true,
      cell: ({ quantity, newest }) => (newest ? readingSaid(quantity, units, newest.value) : 'none yet'),
    },
    {
      id: 'age',
      head: 'Taken',
      cell: ({ newest }) => (newest ? <Taken newest={newest} zone={site.zone} /> : '–'),
    },
    {
      id: 'quality',
      head: 'Quality',
      cell: ({ newest }) => (newest ? <QualityMark quality={newest.quality} why={newest.why} /> : '–'),
    },
  ];
}

/** How long ago, how and when; one that is too old to say how things stand is said to be. */
function Taken({ newest: { at, ageS, isStale, origin, lateS }, zone }: { newest: NewestView; zone: string }) {
  return (
    <>
      {isStale ? (
        <strong>
          <span aria-hidden="true" className={style.stale}>
            ▲
          </span>{' '}
          stale:{' '}
        </strong>
      ) : null}
      {ago(ageS)}, {ORIGIN_WORDS[origin]}
      <span className={style.about}>{instantSaid(at, zone)}</span>
      {lateS === null ? null : <span className={style.about}>late: it came {lasting(lateS)} after it was taken</span>}
    </>
  );
}
