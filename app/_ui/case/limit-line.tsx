import type { ChartLimit } from './chart-limits';
import style from './plot.module.css';

interface LimitLineProps {
  limit: ChartLimit;
  /** px of the limit, and of the chart's upper and lower edge. */
  at: number;
  top: number;
  bottom: number;
  left: number;
  right: number;
  hatch: string;
}

/** A limit of tolerance with the forbidden side hatched. */
export function LimitLine({ limit, at, top, bottom, left, right, hatch }: LimitLineProps) {
  const [from, to] = limit.direction === 'above' ? [top, at] : [at, bottom];
  return (
    <g>
      <rect x={left} width={right - left} y={from} height={Math.max(0, to - from)} fill={`url(#${hatch})`} />
      <path className={style.limit} d={`M${left} ${at}H${right}`} />
    </g>
  );
}

interface LimitNameProps {
  limit: ChartLimit;
  right: number;
  /** px of the name's foot. */
  y: number;
  /** It stands in the right margin rather than on the chart. */
  outside: boolean;
}

/** What a limit is, above every line that may cross it. */
export function LimitName({ limit, right, y, outside }: LimitNameProps) {
  return (
    <text className={style.limitName} x={outside ? right + 8 : right - 4} y={y} textAnchor={outside ? 'start' : 'end'}>
      {outside ? limit.says : `limit: ${limit.says}`}
    </text>
  );
}
