import Link from '../frame/link';
import { readingSaid } from '#core/readings/figures';
import { type Span, SPAN_NAMES } from '#core/readings/spans';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { HappenedSection } from './happened-section';
import { PlotKey } from './plot-marks';
import { QualityMark } from './quality';
import { ReadingPlot } from './reading-plot';
import type { PointView, SensorReadingsView } from './sensor-view';
import { LAW_WORDS, ORIGIN_WORDS, QUANTITY_WORDS, SPAN_WORDS, sensorAddress } from './words';
import style from './readings.module.css';
import { capital } from '../words/capital';
import { lasting } from '../words/lasting';

interface SensorBodyProps {
  view: SensorReadingsView;
  units: Custom;
}

const LATE =
  ' What came late, more than an hour after it was taken, was not known in its time: it counts here, and no alarm ended by it.';
const NOT_COUNTED = ' Where it says so, hours were rolled up before it was counted what came late.';
/** Readings one by one of which it is said how many there are. */
const MANY = 5000;

/** What a sensor read over a span of time: as a drawing, as a table, and as a file. */
export function SensorBody({ view, units }: SensorBodyProps) {
  const { site, system, sensor, days } = view;
  const isEmpty = view.buckets.length === 0 && view.points.length === 0;
  return (
    <Page
      title={sensor.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'readings'), name: 'Readings' },
      ]}
      lead={
        <p>
          {capital(QUANTITY_WORDS[sensor.quantity])} of {system.name},{' '}
          {days.first === days.last ? days.first : `${days.first} to ${days.last}`}. Times are those of {site.zone}.
        </p>
      }
    >
      {view.derived ? <Derived view={view} derived={view.derived} /> : null}
      <SpanLinks view={view} />
      {isEmpty ? (
        <p>Nothing was read in this time. Look at an earlier or a longer one, or take in the file of a logger.</p>
      ) : (
        <>
          <ReadingPlot view={view} units={units} />
          <PlotKey {...lateness(view.buckets)} />
        </>
      )}
      {view.rows.length > 0 ? <HoursSection view={view} units={units} /> : null}
      <HappenedSection view={view} />
      {view.points.length > 0 ? <PointsSection view={view} units={units} /> : null}
    </Page>
  );
}

/** A derived series says what it follows from: nobody reads it and nobody enters it. */
function Derived({ view, derived }: { view: SensorReadingsView; derived: NonNullable<SensorReadingsView['derived']> }) {
  return (
    <p>
      Derived, not read: {LAW_WORDS[derived.kind]}. It follows from{' '}
      {derived.from.map(({ key, name }, i) => (
        <span key={key}>
          {i > 0 ? ', ' : ''}
          <Link href={sensorAddress(view.site.key, view.system.key, key)}>{name}</Link>
        </span>
      ))}
      .
    </p>
  );
}

/** How long it was outside the limits of its alarms, where hours or days are drawn. */
function outsideSaid({ outside, limits }: SensorReadingsView): string {
  if (!outside || limits.length === 0) return '';
  const { outsideS, heldS } = outside;
  const said = outsideS === 0 ? 'never' : lasting(outsideS);
  return ` Outside the limits of its alarms: ${said}, of ${lasting(heldS)} for which something is known; a reading holds until the next, for an hour at most.`;
}

function SpanLinks({ view: { site, system, sensor, span, days } }: { view: SensorReadingsView }) {
  const here = sensorAddress(site.key, system.key, sensor.key);
  const fileAddress = `/api/readings/${[site.key, system.key, sensor.key].map(encodeURIComponent).join('/')}`;
  const to = (other: Span, until: string) => `${here}?span=${other}&until=${until}`;
  return (
    <nav aria-label="Time shown">
      <ul className={style.ways}>
        {SPAN_NAMES.map((name) => (
          <li key={name}>
            {name === span ? (
              <strong>{SPAN_WORDS[name]}</strong>
            ) : (
              <Link href={to(name, days.last)}>{SPAN_WORDS[name]}</Link>
            )}
          </li>
        ))}
        <li>
          <Link href={to(span, days.earlier)}>Earlier</Link>
        </li>
        {days.later ? (
          <li>
            <Link href={to(span, days.later)}>Later</Link>
          </li>
        ) : null}
        <li>
          <a href={`${fileAddress}?span=${span}&until=${days.last}`}>As a CSV file</a>
        </li>
      </ul>
    </nav>
  );
}

function HoursSection({ view, units }: SensorBodyProps) {
  type Row = SensorReadingsView['rows'][number];
  const said = (value: number) => readingSaid(view.sensor.quantity, units, value);
  const { isAnyLate, isAllCounted } = lateness(view.rows);
  const columns: Column<Row>[] = [
    { id: 'from', head: 'From', cell: ({ there }) => there },
    { id: 'low', head: 'Lowest', figure: true, cell: ({ low }) => said(low) },
    { id: 'mean', head: 'Average', figure: true, cell: ({ mean }) => said(mean) },
    { id: 'high', head: 'Highest', figure: true, cell: ({ high }) => said(high) },
    { id: 'count', head: 'Readings', figure: true, cell: ({ count }) => count },
    ...(isAnyLate || !isAllCounted ? [{ id: 'late', head: 'Late', figure: isAllCounted, cell: lateSaid }] : []),
  ];
  return (
    <Section id="hours" title="As a table">
      <Ledger
        narrow
        caption={`Good readings that came by themselves or from a file. What is suspect or bad enters no average.${isAnyLate ? LATE : ''}${isAllCounted ? '' : NOT_COUNTED}${outsideSaid(view)}`}
        columns={columns}
        rows={view.rows}
        keyOf={({ fromMs }) => String(fromMs)}
      />
    </Section>
  );
}

/** Whether any of them came late, and whether that was counted of all. */
function lateness(buckets: readonly { late: number; notCounted: number }[]) {
  return {
    isAnyLate: buckets.some(({ late }) => late > 0),
    isAllCounted: buckets.every(({ notCounted }) => notCounted === 0),
  };
}

function lateSaid({ late, count, notCounted }: SensorReadingsView['rows'][number]): string {
  if (notCounted === 0) return `${late}`;
  return notCounted === count ? 'not counted' : `${late}, in part not counted`;
}

function PointsSection({ view, units }: SensorBodyProps) {
  const columns: Column<PointView>[] = [
    { id: 'at', head: 'At', cell: ({ there }) => there },
    {
      id: 'value',
      head: 'Reading',
      figure: true,
      cell: ({ value }) => readingSaid(view.sensor.quantity, units, value),
    },
    { id: 'quality', head: 'Quality', cell: ({ quality, why }) => <QualityMark quality={quality} why={why} /> },
    { id: 'flag', head: 'Flag', cell: ({ flag }) => flag ?? '–' },
    { id: 'origin', head: 'Came', cell: ({ origin }) => ORIGIN_WORDS[origin] },
  ];
  const caption =
    view.pointCount > view.points.length
      ? `The latest ${view.points.length} of ${view.pointCount > MANY ? `more than ${MANY}` : view.pointCount}; the file has all of them.`
      : 'Readings that are not good, and those taken by hand.';
  return (
    <Section id="single" title="One by one">
      <Ledger
        caption={caption}
        columns={columns}
        rows={view.points}
        keyOf={({ atMs, origin }) => `${atMs} ${origin}`}
      />
    </Section>
  );
}
