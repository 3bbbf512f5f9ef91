import type { ScaleLinear } from 'd3-scale';
import type { ComesStretch } from './comes-through';
import style from '../case/cover-chart.module.css';

/** Height of the row, px. */
export const COMES = 22;
/** Width of a letter, px, as near as it has to be. */
const LETTER = 6.2;

/** Who would come, beneath the rows of the rota: by name where there is room for it, else by the first letters of the name. */
export function ComesRow({
  comes,
  x,
  y,
  left,
}: {
  comes: readonly ComesStretch[];
  x: ScaleLinear<number, number>;
  y: number;
  left: number;
}) {
  return (
    <g>
      <text className={style.lane} x={left - 6} y={y + 11} textAnchor="end">
        comes
      </text>
      {comes.map(({ span: [from, to], name }) => (
        <g key={from}>
          <path className={style.axis} d={`M${x(from)} ${y + 1}v12`} />
          <text className={style.lane} x={x(from) + 3} y={y + 11}>
            {fitted(name, x(to) - x(from) - 5)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** As much of a name as fits. @param width px */
function fitted(name: string, width: number): string {
  const first = name.split(' ')[0] ?? name;
  const whole = [name, first, initials(name)].find((text) => text.length * LETTER <= width);
  return whole ?? '';
}

function initials(name: string): string {
  return name
    .split(/\s+/)
    .map((word) => word.charAt(0))
    .join('');
}
