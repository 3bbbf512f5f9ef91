import type { SensorQuantity } from '#core/facility/system';
import { readingSaid, readingSymbol, toCustom } from '#core/readings/figures';
import type { Custom } from '#core/units/shown';
import { Fold } from '../frame/fold';
import { TwoWidths } from '../plot/two-widths';
import type { SensorView } from './incident-view';
import { quantityName } from './measured';
import { SeriesPlot } from './series-plot';
import style from './series-plot.module.css';
import { SeriesTable } from './series-table';
import type { TimelineView } from './timeline-body';

/** What a sensor read, as it is drawn. */
export interface SeriesView {
  sensor: SensorView;
  points: { atMs: number; value: number }[];
  byHand: { atMs: number; value: number }[];
  count: number;
  bad: number;
}

/** A sensor in the person's unit, with its limits. */
export interface DrawnSeries {
  id: string;
  title: string;
  decimals: number;
  points: { atMs: number; value: number }[];
  byHand: { atMs: number; value: number }[];
  limits: { value: number; name: string }[];
  isBeyond: boolean;
  bad: number;
}

/** Small ruled plots of what was read round the incident: those beyond a limit first, the others folded. */
export function SeriesPlots({
  page,
  units,
}: {
  page: Pick<TimelineView, 'series' | 'limits' | 'marks' | 'fromMs' | 'toMs' | 'head'>;
  units: Custom;
}) {
  const drawn = page.series.map((series) => drawnOf(series, page.limits, units));
  if (drawn.length === 0) return <p>No sensor has a reading in this time.</p>;
  const [beyond, within] = [drawn.filter((one) => one.isBeyond), drawn.filter((one) => !one.isBeyond)];
  const { zone } = page.head.site;
  const plot = (one: DrawnSeries) => (
    <figure key={one.id} className={style.figure}>
      <TwoWidths
        draw={(width) => (
          <SeriesPlot series={one} marks={page.marks} fromMs={page.fromMs} toMs={page.toMs} zone={zone} width={width} />
        )}
      />
    </figure>
  );
  return (
    <>
      {beyond.map(plot)}
      {within.length > 0 ? (
        <Fold
          title={`Sensors that stayed within their limits, or have none (${within.length})`}
          open={beyond.length === 0}
        >
          {within.map(plot)}
        </Fold>
      ) : null}
      <Fold title="The plots as a table">
        <SeriesTable series={drawn} zone={zone} />
      </Fold>
    </>
  );
}

function drawnOf({ sensor, points, byHand, bad }: SeriesView, all: TimelineView['limits'], units: Custom): DrawnSeries {
  const quantity = sensor.quantity as SensorQuantity;
  const shown = ({ atMs, value }: { atMs: number; value: number }) => ({
    atMs,
    value: toCustom(quantity, units, value),
  });
  const own = all.filter((limit) => limit.sensor === sensor.key);
  const isBeyond = [...points, ...byHand].some(({ value }) =>
    own.some(({ above, below }) => (above !== undefined && value > above) || (below !== undefined && value < below)),
  );
  const limits = own.flatMap(({ name, above, below }) =>
    [above, below].flatMap((value) => (value === undefined ? [] : [{ name, value: toCustom(quantity, units, value) }])),
  );
  const unit = readingSymbol(quantity, units);
  const kind = sensor.name.toLowerCase().includes(quantityName(quantity).toLowerCase())
    ? ''
    : `${quantityName(quantity)}, `;
  return {
    id: sensor.id,
    title: `${kind}${sensor.name}${unit === '' ? '' : `, ${unit}`}`,
    decimals: decimalsIn(readingSaid(quantity, units, 0)),
    points: points.map(shown),
    byHand: byHand.map(shown),
    limits,
    isBeyond,
    bad,
  };
}

/** Decimals that a figure is written with. */
function decimalsIn(said: string): number {
  return /\.(\d+)/.exec(said)?.[1]?.length ?? 0;
}
