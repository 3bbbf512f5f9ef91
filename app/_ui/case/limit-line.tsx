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
  /** It is named in the right margin rather than on the chart. */
  outside: boolean;
  /** px of the name's foot. */
  nameAt: number;
}

/** A limit of tolerance with the forbidden side hatched. */
export function LimitLine({ limit, at, top, bottom, left, right, hatch, outside, nameAt }: LimitLineProps) {
  const isAbove = limit.direction === 'above';
  const [from, to] = isAbove ? [top, at] : [at, bottom];
  return (
    <g>
      <rect x={left} width={right - left} y={from} height={Math.max(0, to - from)} fill={`url(#${hatch})`} />
      <path className={style.limit} d={`M${left} ${at}H${right}`} />
      {outside ? (
        <text className={style.limitName} x={right + 8} y={nameAt}>
          {limit.says}
        </text>
      ) : (
        <text className={style.limitName} x={right - 4} y={nameAt} textAnchor="end">
          limit: {limit.says}
        </text>
      )}
    </g>
  );
}
