import type { ScaleLinear } from 'd3-scale';
import type { SensorReadingsView } from './sensor-view';
import style from './plot.module.css';
import { stateSaid } from './words';

interface StateBandsProps {
  states: SensorReadingsView['states'];
  /** From ms since 1970 to px. */
  x: ScaleLinear<number, number>;
  /** px of the chart's upper and lower edge. */
  range: [number, number];
}

/** px below which a name does not fit into its band. */
const ROOM = 56;

/** States that were in force, as bands over the time they lasted, each with its name where there is room. */
export function StateBands({ states, x, range: [top, bottom] }: StateBandsProps) {
  const [left = 0, right = 0] = x.range();
  return (
    <g>
      {states.map(({ state, fromMs, toMs }) => {
        const from = Math.max(left, x(fromMs));
        const width = Math.max(1.5, Math.min(right, toMs === null ? right : x(toMs)) - from);
        return (
          <g key={`${state} ${fromMs}`}>
            <rect className={style.state} x={from} y={top} width={width} height={bottom - top} />
            <path className={style.stateEdge} d={`M${from} ${top}V${bottom}M${from + width} ${top}V${bottom}`} />
            {width > ROOM ? (
              <text className={style.stateName} x={from + 4} y={top + 12}>
                {stateSaid(state)}
              </text>
            ) : null}
          </g>
        );
      })}
    </g>
  );
}

interface LimitBandsProps {
  limits: SensorReadingsView['limits'];
  /** From the facility file's unit to px. */
  at: (value: number) => number;
  left: number;
  right: number;
  range: [number, number];
}

/** Limits of alarms: a line each, and what lies beyond it as a band. */
export function LimitBands({ limits, at, left, right, range: [top, bottom] }: LimitBandsProps) {
  return (
    <g>
      {limits
        .filter(({ value }) => at(value) >= top && at(value) <= bottom)
        .map(({ name, side, value }) => {
          const y = at(value);
          const [from, to] = side === 'above' ? [top, y] : [y, bottom];
          return (
            <g key={`${side} ${value} ${name}`}>
              <rect className={style.beyond} x={left} y={from} width={right - left} height={to - from} />
              <path className={style.limit} d={`M${left} ${y}H${right}`} />
              <text className={style.limitName} x={right - 2} y={y + (side === 'above' ? -4 : 13)} textAnchor="end">
                {`alarm ${side} this: ${name}`}
              </text>
            </g>
          );
        })}
    </g>
  );
}
