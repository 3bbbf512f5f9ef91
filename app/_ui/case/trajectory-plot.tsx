import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { CaseTrajectory } from '#core/review/trajectory';
import { timeTicks, wallClock } from '../plot/time-axis';
import { TwoWidths } from '../plot/two-widths';
import { CHART, CHART_HEAD, ChartLines } from './chart-lines';
import type { CaseMoment } from './case-moments';
import { MomentRules, momentRows } from './moment-rules';
import type { QuantityChart } from './quantities';
import style from './plot.module.css';

interface TrajectoryPlotProps {
  title: string;
  trajectory: CaseTrajectory;
  charts: QuantityChart[];
  moments: CaseMoment[];
  /** The tank that is harmed first, and how it is called. */
  main: { key: string; name: string };
  /** Key of the sump; undefined without one. */
  hub: string | undefined;
}

/** How much longer than the course the axis may grow to take in a late moment. */
const STRETCH = 1.6;

/** The course of a fault case when nobody comes: one chart a quantity under a shared time axis; for a desk and for a phone. */
export function TrajectoryPlot(props: TrajectoryPlotProps) {
  return <TwoWidths desk={1100} draw={(width) => <Plot {...props} width={width} />} />;
}

function Plot({ title, trajectory, charts, moments, main, hub, width }: TrajectoryPlotProps & { width: number }) {
  const id = useId();
  const phone = width < 500;
  const right = width - (phone ? 8 : 150);
  const ruled = moments.filter((m) => m.kind !== 'event');
  const left = phone ? 40 : 56;
  const untilS = Math.max(trajectory.endS, ...ruled.map((m) => m.atS).filter((s) => s <= STRETCH * trajectory.endS));
  const later = ruled.filter((m) => m.atS > untilS);
  const x = scaleLinear([0, untilS * 1.01], [left, right]);
  const drawn = ruled.filter((m) => m.atS <= untilS);
  const top = momentRows({ moments: drawn, x, right }) + (later.length > 0 ? 20 : 0) + 6;
  const bottom = top + charts.length * (CHART + CHART_HEAD);
  const ticks = timeTicks(untilS, (right - left) / (phone ? 52 : 80));
  const rankOf = (tank: string) => (tank === main.key ? 'main' : tank === hub ? 'second' : 'other');
  return (
    <svg
      className={style.plot}
      viewBox={`0 0 ${width} ${bottom + 40}`}
      width={width}
      height={bottom + 40}
      role="img"
      aria-labelledby={`${id}t`}
    >
      <title id={`${id}t`}>{title}</title>
      <defs>
        <pattern id={`${id}h`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={style.hatch} d="M0 0V6" />
        </pattern>
      </defs>
      {charts.map((chart, i) => (
        <ChartLines
          key={chart.quantity}
          chart={chart}
          x={x}
          left={left}
          right={right}
          y={top + CHART_HEAD + i * (CHART + CHART_HEAD)}
          rankOf={rankOf}
          hatch={`${id}h`}
          outside={!phone}
        />
      ))}
      {trajectory.endS < untilS ? <path className={style.end} d={`M${x(trajectory.endS)} ${top}V${bottom}`} /> : null}
      <MomentRules moments={drawn} x={x} right={right} bottom={bottom} />
      {later.length > 0 ? (
        <text className={style.moment} x={right} y={top - 8} textAnchor="end">
          {`${later.map((m) => m.word).join(' and ')} only after this →`}
        </text>
      ) : null}
      <path className={style.axis} d={`M${left} ${bottom}H${right}`} />
      {ticks.map(({ atS, label }) => (
        <g key={atS}>
          <path className={style.axis} d={`M${x(atS)} ${bottom}v5`} />
          <text className={style.tick} x={x(atS)} y={bottom + 18} textAnchor="middle">
            {label}
          </text>
          {phone ? null : (
            <text className={style.clock} x={x(atS)} y={bottom + 33} textAnchor="middle">
              {wallClock(trajectory.onsetHour, atS)}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
