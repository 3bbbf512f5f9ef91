import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { type Point, simplified } from '../plot/simplified';
import { spreadHeights, written } from '../plot/written';
import { LimitLine, LimitName } from './limit-line';
import type { QuantityChart } from './quantities';
import style from './plot.module.css';

export const CHART = 124;
export const CHART_HEAD = 34;
/** The main line is drawn last, above the others. */
const ORDER = { other: 0, second: 1, main: 2 };

interface ChartLinesProps {
  chart: QuantityChart;
  /** px of a time, s after the onset */
  x: (atS: number) => number;
  left: number;
  right: number;
  y: number;
  /** How a tank's line is drawn. */
  rankOf: (tank: string) => 'main' | 'second' | 'other';
  hatch: string;
  /** Limits are named in the right margin rather than on the chart. */
  outside: boolean;
}

/** One quantity over time: ruled, with its limits of tolerance and the forbidden side hatched. */
export function ChartLines({ chart, x, left, right, y, rankOf, hatch, outside }: ChartLinesProps) {
  const scale = scaleLinear(chart.domain, [y + CHART, y]);
  const namesAt = spreadHeights(
    chart.limits.map((l) => scale(l.value) + (outside ? 4 : l.direction === 'above' ? 13 : -5)),
    13,
  );
  const path = line<Point>().digits(1);
  const tracks = [...chart.tracks].sort((a, b) => ORDER[rankOf(a.tank)] - ORDER[rankOf(b.tank)]);
  return (
    <g>
      <text className={style.title} x={0} y={y - 9}>
        {chart.title}
        {chart.unit ? `, ${chart.unit}` : ''}
      </text>
      {scale.ticks(4).map((tick) => (
        <g key={tick}>
          <path className={style.grid} d={`M${left} ${scale(tick)}H${right}`} />
          <text className={style.tick} x={left - 8} y={scale(tick) + 4} textAnchor="end">
            {written(tick, chart.decimals)}
          </text>
        </g>
      ))}
      {chart.limits.map((limit) => (
        <LimitLine
          key={limit.says}
          limit={limit}
          at={scale(limit.value)}
          top={y}
          bottom={y + CHART}
          left={left}
          right={right}
          hatch={hatch}
        />
      ))}
      {tracks.map((track) => (
        <path
          key={track.tank}
          className={style.track}
          data-rank={rankOf(track.tank)}
          d={path(simplified(track.timesS.map((t, i): Point => [x(t), scale(track.values[i] ?? 0)]))) ?? ''}
        />
      ))}
      {chart.limits.map((limit, i) => (
        <LimitName key={limit.says} limit={limit} right={right} y={namesAt[i] ?? 0} outside={outside} />
      ))}
    </g>
  );
}
