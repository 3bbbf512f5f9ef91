import type { ScaleLinear } from 'd3-scale';
import type { ReactNode } from 'react';
import type { RotaLanes, Stretch } from './rota-lanes';
import style from './cover-chart.module.css';

const ROW = 18;
/** Height of the rows beneath the curve, px. */
export const LANES = 3 * ROW + 6;

/** Who is there, beneath the cover chart: on site a full bar, on call an open one, every round a stroke. */
export function RotaRows({
  lanes,
  x,
  y,
  left,
}: {
  lanes: RotaLanes;
  x: ScaleLinear<number, number>;
  y: number;
  left: number;
}) {
  return (
    <g>
      <Row name="on site" y={y} left={left}>
        {lanes.onSite.map(([from, to]: Stretch) => (
          <rect key={from} className={style.onSite} x={x(from)} y={y + 3} width={x(to) - x(from)} height={8} />
        ))}
      </Row>
      <Row name="on call" y={y + ROW} left={left}>
        {lanes.onCall.map(([from, to]: Stretch) => (
          <rect key={from} className={style.onCall} x={x(from)} y={y + ROW + 3} width={x(to) - x(from)} height={8} />
        ))}
      </Row>
      <Row name="rounds" y={y + 2 * ROW} left={left}>
        {lanes.rounds.map((at) => (
          <path key={at} className={style.round} d={`M${x(at)} ${y + 2 * ROW + 2}v10`} />
        ))}
      </Row>
    </g>
  );
}

function Row({ name, y, left, children }: { name: string; y: number; left: number; children: ReactNode }) {
  return (
    <g>
      <text className={style.lane} x={left - 6} y={y + 11} textAnchor="end">
        {name}
      </text>
      {children}
    </g>
  );
}
