import type { ScaleLinear } from 'd3-scale';
import { dayTicks } from './day-ticks';
import style from './plot.module.css';

interface DayAxisProps {
  /** From ms since 1970 to px. */
  x: ScaleLinear<number, number>;
  y: number;
  /** IANA zone whose days and hours stand at it. */
  zone: string;
}

/** An axis of days or hours as the clocks of the site show them. */
export function DayAxis({ x, y, zone }: DayAxisProps) {
  const [left = 0, right = 0] = x.range();
  const [from = 0, to = 0] = x.domain();
  return (
    <g>
      <path className={style.axis} d={`M${left} ${y}H${right}`} />
      {dayTicks(from, to, zone, Math.floor((right - left) / 64)).map(({ atMs, label, below }) => (
        <g key={atMs}>
          <path className={style.axis} d={`M${x(atMs)} ${y}v5`} />
          <text className={style.tick} x={x(atMs)} y={y + 18} textAnchor="middle">
            {label}
          </text>
          {below ? (
            <text className={style.tick} x={x(atMs)} y={y + 34} textAnchor="middle">
              {below}
            </text>
          ) : null}
        </g>
      ))}
    </g>
  );
}
