import { scaleLinear } from 'd3-scale';
import { useId } from 'react';
import type { CaseTrajectory } from '#core/review/trajectory';
import { TwoWidths } from '../plot/two-widths';
import { CHART, CHART_HEAD, ChartLines } from './chart-lines';
import type { CaseMoment } from './case-moments';
import { MomentRules, momentRows } from './moment-rules';
import type { QuantityChart } from './quantities';
import { TimeAxis } from './time-axis';
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
  const isPhone = width < 500;
  const left = isPhone ? 40 : 56;
  const right = width - (isPhone ? 8 : 150);
  const { drawn, later, untilS } = withinReach(moments, trajectory.endS);
  const x = scaleLinear([0, untilS * 1.01], [left, right]);
  const top = momentRows({ moments: drawn, x, right }) + (later.length > 0 ? 20 : 0) + 6;
  const bottom = top + charts.length * (CHART + CHART_HEAD);
  const rankOf = (tank: string) => (tank === main.key ? 'main' : tank === hub ? 'second' : 'other');
  const yOf = (i: number) => top + CHART_HEAD + i * (CHART + CHART_HEAD);
  const lines = { x, left, right, rankOf, hatch: `${id}h`, outside: !isPhone };
  const size = { viewBox: `0 0 ${width} ${bottom + 40}`, width, height: bottom + 40 };
  return (
    <svg className={style.plot} {...size} role="img" aria-labelledby={`${id}t`}>
      <title id={`${id}t`}>{title}</title>
      <defs>
        <pattern id={`${id}h`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className={style.hatch} d="M0 0V6" />
        </pattern>
      </defs>
      <MomentRules moments={drawn} x={x} right={right} bottom={bottom} />
      {charts.map((chart, i) => (
        <ChartLines key={chart.quantity} chart={chart} y={yOf(i)} {...lines} />
      ))}
      {trajectory.endS < untilS ? <path className={style.end} d={`M${x(trajectory.endS)} ${top}V${bottom}`} /> : null}
      {later.length > 0 ? (
        <text className={style.moment} x={right} y={top - 8} textAnchor="end">
          {`${later.map((m) => m.word).join(' and ')} only after this →`}
        </text>
      ) : null}
      <TimeAxis x={x} y={bottom} onsetHour={trajectory.onsetHour} untilS={untilS} clock={!isPhone} />
    </svg>
  );
}

/** The moments that find room on the axis, those that come only later, and where the axis ends, s. */
function withinReach(moments: CaseMoment[], endS: number) {
  const ruled = moments.filter((m) => m.kind !== 'event' && Number.isFinite(m.atS));
  const untilS = Math.max(endS, ...ruled.map((m) => m.atS).filter((s) => s <= STRETCH * endS));
  return { untilS, drawn: ruled.filter((m) => m.atS <= untilS), later: ruled.filter((m) => m.atS > untilS) };
}
