import { extent, median } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useId } from 'react';
import type { Mark } from '#core/incidents/marks';
import { MARK_WORDS } from '#core/incidents/words';
import { written } from '../plot/written';
import type { DrawnSeries } from './series-plots';
import style from './series-plot.module.css';
import { whenSaid } from './when';

interface PlotProps {
  series: DrawnSeries;
  marks: readonly Mark[];
  fromMs: number;
  toMs: number;
  zone: string;
  width: number;
}

const HEIGHT = 110;
const TOP = 24;
const LABELLED: ReadonlySet<string> = new Set(['fault-began', 'first-alarm', 'put-right']);
/** A gap as long as this part of the window, and as so many usual steps, is not bridged. Common practice, no source. */
const GAP = 1 / 24;
const STEPS = 2.5;
/** Px that a label needs. */
const LABEL = 80;

/** One sensor over the window: its readings, those by hand as crosses, its limits dashed, the marks as rules. */
export function SeriesPlot({ series, marks, fromMs, toMs, zone, width }: PlotProps) {
  const id = useId();
  const isPhone = width < 500;
  const [left, right] = [isPhone ? 40 : 56, width - 8];
  const x = scaleLinear([fromMs, toMs], [left, right]);
  const y = scaleLinear(domainOf(series), [TOP + HEIGHT, TOP]).nice(4);
  const bottom = TOP + HEIGHT;
  return (
    <svg
      className={style.plot}
      viewBox={`0 0 ${width} ${bottom + 42}`}
      width={width}
      height={bottom + 42}
      role="img"
      aria-labelledby={id}
    >
      <title id={id}>{`${series.title}. The same stands in the table below.`}</title>
      <text className={style.title} x={0} y={12}>
        {series.title}
      </text>
      {y.ticks(4).map((tick) => (
        <g key={tick}>
          <path className={style.grid} d={`M${left} ${y(tick)}H${right}`} />
          <text className={style.tick} x={left - 6} y={y(tick) + 4} textAnchor="end">
            {written(tick, series.decimals)}
          </text>
        </g>
      ))}
      {series.limits.map(({ name, value }) => (
        <g key={`${name}${value}`}>
          <path className={style.limit} d={`M${left} ${y(value)}H${right}`} />
          <text className={style.name} x={right} y={y(value) - 4} textAnchor="end">
            {name}
          </text>
        </g>
      ))}
      <MarkRules marks={marks} x={x} bottom={bottom} isPhone={isPhone} />
      <path className={style.track} d={pathOf(series, x, y, gapIn(series, toMs - fromMs))} />
      {series.byHand.map(({ atMs, value }) => (
        <path key={atMs} className={style.hand} d={`M${x(atMs) - 4} ${y(value) - 4}l8 8m-8 0l8-8`} />
      ))}
      <path className={style.axis} d={`M${left} ${bottom}H${right}`} />
      {[fromMs, toMs].map((atMs, i) => (
        <text key={atMs} className={style.tick} x={x(atMs)} y={bottom + 34} textAnchor={i === 0 ? 'start' : 'end'}>
          {whenSaid(atMs, zone)}
        </text>
      ))}
    </svg>
  );
}

type Scale = (value: number) => number;

function MarkRules({
  marks,
  x,
  bottom,
  isPhone,
}: {
  marks: readonly Mark[];
  x: Scale;
  bottom: number;
  isPhone: boolean;
}) {
  const labelled = marks.filter(({ mark }) => LABELLED.has(mark) && !isPhone);
  const apart = labelled.filter(({ atMs }, i) => i === 0 || x(atMs) - x(labelled[i - 1]?.atMs ?? 0) > LABEL);
  return (
    <g>
      {marks.map(({ mark, atMs }) => (
        <path key={mark} className={style.rule} data-mark={mark} d={`M${x(atMs)} ${TOP}V${bottom + 4}`} />
      ))}
      {apart.map(({ mark, atMs }) => (
        <text key={mark} className={style.name} x={x(atMs)} y={bottom + 17} textAnchor="middle">
          {MARK_WORDS[mark]}
        </text>
      ))}
    </g>
  );
}

function pathOf({ points }: DrawnSeries, x: Scale, y: Scale, gapMs: number): string {
  const draw = line<{ atMs: number; value: number }>()
    .x(({ atMs }) => x(atMs))
    .y(({ value }) => y(value));
  const runs: { atMs: number; value: number }[][] = [];
  for (const point of points) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && point.atMs - last.atMs <= gapMs) run.push(point);
    else runs.push([point]);
  }
  return runs.map((run) => draw(run) ?? '').join('');
}

/** ms between two readings from which they are not joined. */
function gapIn({ points }: DrawnSeries, windowMs: number): number {
  const steps = points.slice(1).map(({ atMs }, i) => atMs - (points[i]?.atMs ?? atMs));
  return Math.max(windowMs * GAP, STEPS * (median(steps) ?? 0));
}

/** What is drawn from top to bottom: every reading and limit, and never so little that noise looks like a storm. */
function domainOf({ points, byHand, limits, decimals }: DrawnSeries): [number, number] {
  const values = [...points, ...byHand, ...limits].map(({ value }) => value);
  const [low = 0, high = 1] = extent(values);
  const least = 10 / 10 ** decimals;
  const more = Math.max(0, (least - (high - low)) / 2) + (high - low) * 0.05;
  return [low - more, high + more];
}
