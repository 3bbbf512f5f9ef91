import type { ScaleLinear } from 'd3-scale';
import { timeTicks, wallClock } from '../plot/time-ticks';
import style from './plot.module.css';

interface TimeAxisProps {
  x: ScaleLinear<number, number>;
  y: number;
  /** Hour of the week at which the fault begins. */
  onsetHour: number;
  untilS: number;
  /** Whether the clock on the wall stands beneath. */
  clock: boolean;
}

/** The time axis that all charts of a course share: after the onset, and on the wall. */
export function TimeAxis({ x, y, onsetHour, untilS, clock }: TimeAxisProps) {
  const [left = 0, right = 0] = x.range();
  return (
    <g>
      <path className={style.axis} d={`M${left} ${y}H${right}`} />
      {timeTicks(untilS, (right - left) / (clock ? 80 : 52)).map(({ atS, label }) => (
        <g key={atS}>
          <path className={style.axis} d={`M${x(atS)} ${y}v5`} />
          <text className={style.tick} x={x(atS)} y={y + 18} textAnchor="middle">
            {label}
          </text>
          {clock ? (
            <text className={style.clock} x={x(atS)} y={y + 33} textAnchor="middle">
              {wallClock(onsetHour, atS)}
            </text>
          ) : null}
        </g>
      ))}
    </g>
  );
}
