import { extent } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, curveMonotoneX, line } from 'd3-shape';
import { useId } from 'react';
import { HOURS_OF_WEEK } from '#core/time/week';
import { dayName } from '../plot/time-ticks';
import { isMidway } from '../plot/simplified';
import { TwoWidths } from '../plot/two-widths';
import { COMES, ComesRow } from '../cover/comes-row';
import type { ComesStretch } from '../cover/comes-through';
import type { CoverPoint } from './cover-points';
import { LANES, RotaRows } from './rota-rows';
import type { RotaLanes } from './rota-lanes';
import style from './cover-chart.module.css';

const HEIGHT = 190;
const TOP = 24;
/** Deeper than this the curve is not followed, h. */
const DEEPEST = -36;
/** Higher than this neither, h. */
const HIGHEST = 36;

interface CoverChartProps {
  title: string;
  claimed: CoverPoint[];
  /** Drawn beside it where it differs. */
  tested: CoverPoint[] | null;
  lanes: RotaLanes;
  /** Who would come, where that is told. */
  comes?: readonly ComesStretch[];
}

/** Time to spare over the hours of the week, like a tide curve; the hours below zero are hatched. */
export function CoverChart(props: CoverChartProps) {
  return <TwoWidths desk={1006} draw={(width) => <Chart {...props} width={width} />} />;
}

function Chart({ title, lanes, comes = [], width, ...given }: CoverChartProps & { width: number }) {
  const id = useId();
  const claimed = bends(given.claimed);
  const tested = given.tested && bends(given.tested);
  const left = width < 500 ? 44 : 56;
  const x = scaleLinear([0, HOURS_OF_WEEK], [left, width - 8]);
  const y = scaleLinear(domainOf([...claimed, ...(tested ?? [])]), [TOP + HEIGHT, TOP]).nice(4);
  const bottom = TOP + HEIGHT;
  const height = bottom + 30 + LANES + (comes.length > 0 ? COMES : 0);
  return (
    <svg
      className={style.chart}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}t`}
    >
      <title id={`${id}t`}>{title}</title>
      <defs>
        <pattern id={`${id}h`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={style.hatch} d="M0 0V5" />
        </pattern>
        <clipPath id={`${id}c`}>
          <rect x={left} y={y(0)} width={width - left} height={Math.max(0, bottom - y(0))} />
        </clipPath>
      </defs>
      <text className={style.title} x={left} y={12}>
        hours to spare, by the hour at which the fault begins
      </text>
      {y.ticks(5).map((tick) => (
        <g key={tick}>
          <path className={tick === 0 ? style.zero : style.grid} d={`M${left} ${y(tick)}H${width - 8}`} />
          <text className={style.tick} x={left - 8} y={y(tick) + 4} textAnchor="end">
            {tick > 0 ? `+${tick}` : String(tick).replace('-', '−')}
          </text>
        </g>
      ))}
      <Days x={x} bottom={bottom} wide={width > 500} />
      <Tide points={claimed} x={x} y={y} hatch={`url(#${id}h)`} clip={`url(#${id}c)`} />
      {tested ? <Curve points={tested} x={x} y={y} className={style.tested} /> : null}
      <Curve points={claimed} x={x} y={y} className={style.curve} />
      <path className={style.zero} d={`M${left} ${y(0)}H${width - 8}`} />
      <RotaRows lanes={lanes} x={x} y={bottom + 30} left={left} />
      {comes.length > 0 ? <ComesRow comes={comes} x={x} y={bottom + 30 + LANES} left={left} /> : null}
    </svg>
  );
}

type Axis = ScaleLinear<number, number>;

/** The points without those in the middle of a straight stretch. */
function bends(points: CoverPoint[]): CoverPoint[] {
  const spares = points.map(({ spareH }) => spareH);
  return points.filter((_, i) => !isMidway(spares, i));
}

function domainOf(points: CoverPoint[]): [number, number] {
  const [least = 0, most = 0] = extent(points, (p) => p.spareH);
  return [Math.max(DEEPEST, Math.min(-1, least)), Math.min(HIGHEST, Math.max(1, most))];
}

/** The value as it is drawn: no deeper and no higher than the chart. */
function level({ spareH }: CoverPoint, y: Axis): number {
  const [low = 0, high = 0] = y.domain();
  return y(Math.min(high, Math.max(low, spareH ?? 0)));
}

function Tide({ points, x, y, hatch, clip }: { points: CoverPoint[]; x: Axis; y: Axis; hatch: string; clip: string }) {
  const shape = area<CoverPoint>()
    .defined((p) => p.spareH !== null)
    .x((p) => x(p.hour + 0.5))
    .y0(y(0))
    .y1((p) => level(p, y))
    .curve(curveMonotoneX)
    .digits(1);
  const drawn = shape(points) ?? '';
  return (
    <>
      <path className={style.water} d={drawn} />
      <path d={drawn} fill={hatch} clipPath={clip} />
    </>
  );
}

function Curve({ points, x, y, className }: { points: CoverPoint[]; x: Axis; y: Axis; className: string | undefined }) {
  const shape = line<CoverPoint>()
    .defined((p) => p.spareH !== null)
    .x((p) => x(p.hour + 0.5))
    .y((p) => level(p, y))
    .curve(curveMonotoneX)
    .digits(1);
  return <path className={className} d={shape(points) ?? ''} />;
}

function Days({ x, bottom, wide }: { x: Axis; bottom: number; wide: boolean }) {
  const days = Array.from({ length: 7 }, (_, day) => day);
  return (
    <g>
      {days.map((day) => (
        <g key={day}>
          <path className={style.day} d={`M${x(24 * day)} ${TOP}V${bottom + 20}`} />
          {wide
            ? [6, 12, 18].map((hour) => (
                <path key={hour} className={style.axis} d={`M${x(24 * day + hour)} ${bottom}v${hour === 12 ? 6 : 4}`} />
              ))
            : null}
          <text className={style.tick} x={x(24 * day + 12)} y={bottom + 18} textAnchor="middle">
            {dayName(day)}
          </text>
        </g>
      ))}
      <path className={style.axis} d={`M${x(0)} ${bottom}H${x(HOURS_OF_WEEK)}`} />
    </g>
  );
}
