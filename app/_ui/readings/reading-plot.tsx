import { extent } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useId } from 'react';
import { readingSymbol, toCustom } from '#core/readings/figures';
import { type Bucket, stretches } from '#core/readings/spans';
import type { Custom } from '#core/units/shown';
import { TwoWidths } from '../plot/two-widths';
import { written } from '../plot/written';
import { DayAxis } from './day-axis';
import { LimitBands, StateBands } from './plot-bands';
import { LateMarks, PlotMarks } from './plot-marks';
import type { SensorReadingsView } from './sensor-view';
import { QUANTITY_WORDS } from './words';
import style from './plot.module.css';

interface PlotProps {
  view: SensorReadingsView;
  units: Custom;
}

const TOP = 26;
const HEIGHT = 240;

/** Readings over time, with what is not good and what was taken by hand as marks; for a desk and for a phone. */
export function ReadingPlot(props: PlotProps) {
  return <TwoWidths desk={1200} draw={(width) => <Plot {...props} width={width} />} />;
}

function Plot({ view, units, width }: PlotProps & { width: number }) {
  const id = useId();
  const { quantity } = view.sensor;
  const left = width < 500 ? 44 : 60;
  const right = width - 12;
  const bottom = TOP + HEIGHT;
  const shown = (value: number) => toCustom(quantity, units, value);
  const x = scaleLinear([view.fromMs, view.toMs], [left, right]);
  const y = scaleLinear(domainOf(view, shown), [bottom, TOP]).nice(5);
  const at = (value: number) => y(shown(value));
  const size = { viewBox: `0 0 ${width} ${bottom + 44}`, width, height: bottom + 44 };
  const title = `${view.sensor.name} from ${view.days.first} to ${view.days.last}`;
  return (
    <svg className={style.plot} {...size} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      <text className={style.title} x={0} y={14}>
        {[QUANTITY_WORDS[quantity], readingSymbol(quantity, units)].filter((word) => word !== '').join(', ')}
      </text>
      <StateBands states={view.states} x={x} range={[TOP, bottom]} />
      <LimitBands limits={view.limits} at={at} left={left} right={right} range={[TOP, bottom]} />
      <Grid y={y} left={left} right={right} />
      <Course buckets={view.buckets} gapMs={view.gapMs} x={x} at={at} />
      <LateMarks buckets={view.buckets} x={x} bottom={bottom} />
      <PlotMarks points={view.points} raised={view.raised} x={x} at={at} range={[TOP, bottom]} />
      <DayAxis x={x} y={bottom} zone={view.site.zone} />
    </svg>
  );
}

/** What is good, widened to the limits, and to what is doubtful if that lies near; farther off, it stands at the edge. */
function domainOf({ buckets, points, limits }: SensorReadingsView, shown: (value: number) => number): [number, number] {
  const good = [
    ...buckets.flatMap(({ low, high }) => [low, high]),
    ...points.filter(({ quality }) => quality === 'good').map(({ value }) => value),
  ];
  const doubtful = points.filter(({ quality }) => quality !== 'good').map(({ value }) => value);
  const [least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY] = extent(good);
  const near = doubtful.filter((value) => value >= 2 * least - most && value <= 2 * most - least);
  const values = [...good, ...near, ...limits.map(({ value }) => value)];
  const [low = 0, high = 1] = extent((values.length > 0 ? values : doubtful).map(shown));
  const room = Math.max((high - low) * 0.06, Math.abs(high) * 0.005, 0.05);
  return [low - room, high + room];
}

function Grid({ y, left, right }: { y: ScaleLinear<number, number>; left: number; right: number }) {
  const ticks = y.ticks(5);
  const decimals = Math.max(0, ...ticks.map((tick) => (String(Number(tick.toFixed(3))).split('.')[1] ?? '').length));
  return (
    <g>
      {ticks.map((tick) => (
        <g key={tick}>
          <path className={style.grid} d={`M${left} ${y(tick)}H${right}`} />
          <text className={style.tick} x={left - 8} y={y(tick) + 4} textAnchor="end">
            {written(tick, decimals)}
          </text>
        </g>
      ))}
    </g>
  );
}

interface CourseProps {
  buckets: Bucket[];
  gapMs: number;
  x: ScaleLinear<number, number>;
  at: (value: number) => number;
}

/** The average of each few minutes as a line, from the lowest to the highest of them as a band; nothing over a gap. */
function Course({ buckets, gapMs, x, at }: CourseProps) {
  const middle = ({ fromMs, toMs }: Bucket) => x((fromMs + toMs) / 2);
  const band = area<Bucket>(
    middle,
    ({ low }) => at(low),
    ({ high }) => at(high),
  );
  const mean = line<Bucket>(middle, (bucket) => at(bucket.mean));
  return (
    <g>
      {stretches(buckets, gapMs).map((part) => (
        <g key={part[0]?.fromMs}>
          <path className={style.band} d={band(part) ?? ''} />
          <path className={style.mean} d={mean(part) ?? ''} />
          {part.length === 1 && part[0] ? (
            <circle className={style.single} cx={middle(part[0])} cy={at(part[0].mean)} r={2} />
          ) : null}
        </g>
      ))}
    </g>
  );
}
