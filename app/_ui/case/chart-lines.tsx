import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { QuantityChart } from './quantities';
import { lasting } from '../words/lasting';
import style from './plot.module.css';

export const CHART = 124;
export const CHART_HEAD = 26;

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
  const shown = chart.decimals === 0 ? (v: number) => v.toFixed(0) : (v: number) => v.toFixed(chart.decimals);
  const path = line<[number, number]>()
    .x(([t]) => x(t))
    .y(([, v]) => scale(v));
  const order = { other: 0, second: 1, main: 2 };
  const tracks = [...chart.tracks].sort((a, b) => order[rankOf(a.tank)] - order[rankOf(b.tank)]);
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
            {shown(tick)}
          </text>
        </g>
      ))}
      {chart.limits.map((limit) => {
        const at = scale(limit.value);
        const beyond =
          limit.direction === 'above'
            ? { y, height: Math.max(0, at - y) }
            : { y: at, height: Math.max(0, y + CHART - at) };
        return (
          <g key={`${limit.direction}${limit.value}`}>
            <rect x={left} width={right - left} {...beyond} fill={`url(#${hatch})`} />
            <path className={style.limit} d={`M${left} ${at}H${right}`} />
            <text
              className={style.limitName}
              x={outside ? right + 8 : right - 4}
              y={outside ? at + 4 : limit.direction === 'above' ? at + 13 : at - 5}
              textAnchor={outside ? 'start' : 'end'}
            >
              {`${outside ? '' : 'limit: '}${limit.direction} ${shown(limit.value)}${limit.forMin > 0 ? ` for ${lasting(limit.forMin * 60)}` : ''}`}
            </text>
          </g>
        );
      })}
      {tracks.map((track) => (
        <path
          key={track.tank}
          className={style.track}
          data-rank={rankOf(track.tank)}
          d={path(track.timesS.map((t, i): [number, number] => [t, track.values[i] ?? 0])) ?? ''}
        />
      ))}
    </g>
  );
}
