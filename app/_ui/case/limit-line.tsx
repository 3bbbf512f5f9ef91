import { lasting } from '../words/lasting';
import type { QuantityChart } from './quantities';
import style from './plot.module.css';

interface LimitLineProps {
  limit: QuantityChart['limits'][number];
  /** px of the limit, and of the chart's upper and lower edge. */
  at: number;
  top: number;
  bottom: number;
  left: number;
  right: number;
  /** The limit's value as it is written. */
  said: string;
  hatch: string;
  /** It is named in the right margin rather than on the chart. */
  outside: boolean;
}

/** A limit of tolerance with the forbidden side hatched. */
export function LimitLine({ limit, at, top, bottom, left, right, said, hatch, outside }: LimitLineProps) {
  const isAbove = limit.direction === 'above';
  const [from, to] = isAbove ? [top, at] : [at, bottom];
  const held = limit.forMin > 0 ? ` for ${lasting(limit.forMin * 60)}` : '';
  const name = `${limit.direction} ${said}${held}`;
  return (
    <g>
      <rect x={left} width={right - left} y={from} height={Math.max(0, to - from)} fill={`url(#${hatch})`} />
      <path className={style.limit} d={`M${left} ${at}H${right}`} />
      {outside ? (
        <text className={style.limitName} x={right + 8} y={at + 4}>
          {name}
        </text>
      ) : (
        <text className={style.limitName} x={right - 4} y={isAbove ? at + 13 : at - 5} textAnchor="end">
          limit: {name}
        </text>
      )}
    </g>
  );
}
