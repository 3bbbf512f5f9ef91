import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useId } from 'react';
import type { FittedPoint } from '#core/calibration/found';
import { written } from '../plot/written';
import style from './calibration.module.css';

interface StretchPlotProps {
  title: string;
  points: readonly FittedPoint[];
  /** A reading in the person's unit, and the unit. */
  shown: (value: number) => number;
  unit: string;
  from: string;
  to: string;
}

const WIDTH = 336;
const LEFT = 44;
const TOP = 20;
const HEIGHT = 96;
/** The strip of what is left between readings and curve. */
const STRIP = 30;
const STRIP_TOP = TOP + HEIGHT + 10;
const BOTTOM = STRIP_TOP + STRIP;

/** Readings as dots, the curve that was laid through them, and below what is left between the two. */
export function StretchPlot({ title, points, shown, unit, from, to }: StretchPlotProps) {
  const id = useId();
  const [firstMs = 0, lastMs = 1] = extent(points, ({ atMs }) => atMs);
  const x = scaleLinear([firstMs, Math.max(lastMs, firstMs + 1)], [LEFT, WIDTH - 6]);
  const values = points.flatMap(({ value, fitted }) => [shown(value), shown(fitted)]);
  const [low = 0, high = 1] = extent(values);
  const room = Math.max(0.08 * (high - low), 0.02);
  const y = scaleLinear([low - room, high + room], [TOP + HEIGHT, TOP]);
  const left = points.map(({ value, fitted }) => shown(value) - shown(fitted));
  const most = Math.max(...left.map(Math.abs), 1e-6);
  const strip = scaleLinear([-most, most], [BOTTOM, STRIP_TOP]);
  const curve = line<FittedPoint>(
    ({ atMs }) => x(atMs),
    ({ fitted }) => y(shown(fitted)),
  );
  return (
    <svg className={style.plot} viewBox={`0 0 ${WIDTH} ${BOTTOM + 18}`} role="img" aria-labelledby={id}>
      <title id={id}>{title}</title>
      <text className={style.tick} x={0} y={12}>
        {unit}
      </text>
      {y.ticks(3).map((tick) => (
        <g key={tick}>
          <path className={style.grid} d={`M${LEFT} ${y(tick)}H${WIDTH - 6}`} />
          <text className={style.tick} x={LEFT - 6} y={y(tick) + 4} textAnchor="end">
            {written(tick, decimalsOf(y.ticks(3)))}
          </text>
        </g>
      ))}
      <path className={style.curve} d={curve([...points]) ?? ''} />
      {points.map(({ atMs, value }, i) => (
        <g key={atMs}>
          <circle className={style.reading} cx={x(atMs)} cy={y(shown(value))} r={1.9} />
          <path className={style.left} d={`M${x(atMs)} ${strip(0)}V${strip(left[i] ?? 0)}`} />
        </g>
      ))}
      <path className={style.zero} d={`M${LEFT} ${strip(0)}H${WIDTH - 6}`} />
      <text className={style.tick} x={LEFT - 6} y={strip(0) + 4} textAnchor="end">
        ±{written(most, decimalsOf([most]))}
      </text>
      <text className={style.tick} x={LEFT} y={BOTTOM + 14}>
        {from}
      </text>
      <text className={style.tick} x={WIDTH - 6} y={BOTTOM + 14} textAnchor="end">
        {to}
      </text>
    </svg>
  );
}

/** Digits that tell ticks, or a small number, apart. */
function decimalsOf(ticks: readonly number[]): number {
  const step = ticks.length > 1 ? Math.abs((ticks[1] ?? 1) - (ticks[0] ?? 0)) : (ticks[0] ?? 1);
  return Math.min(4, Math.max(0, Math.ceil(-Math.log10(Math.max(step, 1e-4)))));
}
