import type { Box, Layout } from './layout';
import style from './drawing.module.css';

/** How far the lines run from the boxes, px. */
const OUT = 13;

interface FlowLinesProps {
  layout: Layout;
  width: number;
  /** Tank whose overflow is blocked in the fault under view. */
  blocked: string | null;
  /** Reference of the arrow head. */
  arrow: string;
}

/** The return's way up from the sump, and gravity's way back down. */
export function FlowLines({ layout, width, blocked, arrow }: FlowLinesProps) {
  const { sump, rows, reservoirs } = layout;
  if (!sump) return null;
  const right = width - 5;
  const left = 5;
  const drop = sump.x + 22;
  const top = rows[0]?.[0] ? rows[0][0].y - OUT : sump.y;
  const rise = sump.y + sump.height / 2;
  return (
    <g>
      <path className={style.flow} d={`M${sump.x + sump.width} ${rise}H${right}V${top}`} />
      {rows.map((row) => (
        <RowLines key={row[0]?.tank.key} row={row} left={left} right={right} blocked={blocked} arrow={arrow} />
      ))}
      <path
        className={style.gravity}
        d={`M${left} ${(rows[0]?.[0]?.y ?? 0) + (rows[0]?.[0]?.height ?? 0) + OUT}V${sump.y - OUT}H${drop}V${sump.y}`}
        markerEnd={arrow}
      />
      {reservoirs.map(({ tank, x, y, width: across }) => (
        <path key={tank.key} className={style.flow} d={`M${x + across} ${y + 24}H${sump.x}`} markerEnd={arrow} />
      ))}
      <text className={style.lineName} x={right - 6} y={sump.y - OUT - 4} textAnchor="end">
        return
      </text>
      <text className={style.lineName} x={drop + 8} y={sump.y - OUT - 4}>
        by gravity
      </text>
    </g>
  );
}

interface RowLinesProps extends Pick<FlowLinesProps, 'blocked' | 'arrow'> {
  row: Box[];
  left: number;
  right: number;
}

function RowLines({ row, left, right, blocked, arrow }: RowLinesProps) {
  const [first] = row;
  const last = row[row.length - 1];
  if (!first || !last) return null;
  const supply = first.y - OUT;
  const waste = first.y + first.height + OUT;
  const inlet = (box: Box) => box.x + box.width - 22;
  const outlet = (box: Box) => box.x + 22;
  return (
    <g>
      <path className={style.flow} d={`M${right} ${supply}H${inlet(first)}`} />
      <path className={style.gravity} d={`M${outlet(last)} ${waste}H${left}`} />
      {row.map((box) => (
        <g key={box.tank.key}>
          <path className={style.flow} d={`M${inlet(box)} ${supply}V${box.y}`} markerEnd={arrow} />
          <path className={style.gravity} d={`M${outlet(box)} ${box.y + box.height}V${waste}`} />
          {blocked === box.tank.key ? <Strike x={outlet(box)} y={box.y + box.height + OUT / 2} /> : null}
        </g>
      ))}
    </g>
  );
}

/** The mark of what fails: a cross in a ring. */
export function Strike({ x, y }: { x: number; y: number }) {
  return (
    <g className={style.strike} transform={`translate(${x} ${y})`}>
      <circle r="9" />
      <path d="M-4-4 4 4M-4 4 4-4" />
    </g>
  );
}
