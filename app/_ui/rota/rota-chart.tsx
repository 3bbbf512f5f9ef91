import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import { TwoWidths } from '../plot/two-widths';
import { RotaRow, ROW } from './rota-row';
import type { RotaDayView } from './rota-view';
import style from './rota.module.css';

const TOP = 22;

/** The coming days down the left and the hours across: on site a full bar, on call an open one, nobody hatched. */
export function RotaChart({ days, now }: { days: RotaDayView[]; now: number }) {
  return <TwoWidths desk={1006} draw={(width) => <Chart days={days} now={now} width={width} />} />;
}

function Chart({ days, now, width }: { days: RotaDayView[]; now: number; width: number }) {
  const id = useId();
  const left = width < 500 ? 64 : 84;
  const right = width - 8;
  const x = scaleLinear([0, 24], [left, right]);
  const height = TOP + ROW * days.length + 2;
  return (
    <svg
      className={style.chart}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}t`}
    >
      <title id={`${id}t`}>Who is on in the coming days, by the hour. The same stands in the table below.</title>
      <defs>
        <pattern id={`${id}h`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={style.hatch} d="M0 0V5" />
        </pattern>
      </defs>
      {[0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => (
        <g key={hour}>
          <path className={hour % 6 === 0 ? style.six : style.three} d={`M${x(hour)} ${TOP - 4}V${height - 2}`} />
          {hour % 6 === 0 ? (
            <text
              className={style.tick}
              x={x(hour)}
              y={12}
              textAnchor={hour === 24 ? 'end' : hour === 0 ? 'start' : 'middle'}
            >
              {String(hour).padStart(2, '0')}
            </text>
          ) : null}
        </g>
      ))}
      {days.map((day, at) => (
        <RotaRow
          key={day.date}
          day={day}
          y={TOP + at * ROW}
          left={left}
          right={right}
          hatch={`url(#${id}h)`}
          now={now}
        />
      ))}
    </svg>
  );
}
