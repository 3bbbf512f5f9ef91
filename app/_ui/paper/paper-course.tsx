import { G, Line, Path, Svg, Text, View } from '@react-pdf/renderer';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { CourseBlock } from '../document/block';
import { type CaseMoment, caseMoments } from '../case/case-moments';
import { chartsOf, type QuantityChart } from '../case/quantities';
import type { System } from '#core/facility/system';
import type { CaseTrajectory } from '#core/review/trajectory';
import { caseTitle } from '#core/review/words';
import { timeTicks, wallClock } from '../plot/time-ticks';
import { type Point, simplified } from '../plot/simplified';
import { spreadHeights, written } from '../plot/written';
import { lasting } from '../words/lasting';
import { hourSaid, type Speech } from '../words/said';
import { hatching } from './hatching';
import { MOMENT_SIGNS } from './moment-signs';
import { sheet, WIDTH } from './sheet';

const LEFT = 34;
const RIGHT = WIDTH - 118;
const CHART = 46;
const GAP = 18;
const ROW = 11;
/** How much longer than the course the axis may grow to take in a late moment. */
const STRETCH = 1.6;

interface PaperCourseProps {
  block: CourseBlock;
  trajectory: CaseTrajectory;
  system: System;
  speech: Speech;
}

type Axis = (atS: number) => number;

/** The course of a fault case when nobody comes, as a drawing: one chart a quantity under a shared axis of time. */
export function PaperCourse({ block: { faultCase, column }, trajectory, system, speech }: PaperCourseProps) {
  const harm = faultCase[column].outcomes[0]?.harm;
  const key = harm?.tank || (trajectory.tracks[0]?.tank ?? '');
  const charts = chartsOf({ trajectory, harm, units: speech.units, main: system.tanks.find((t) => t.key === key) });
  const moments = caseMoments(speech, faultCase[column], trajectory, caseTitle(faultCase)).filter(
    (m) => m.kind !== 'event' && Number.isFinite(m.atS),
  );
  const untilS = Math.max(
    trajectory.endS,
    ...moments.map(({ atS }) => atS).filter((s) => s <= STRETCH * trajectory.endS),
  );
  const drawn = moments.filter(({ atS }) => atS <= untilS);
  const later = moments.filter(({ atS }) => atS > untilS).map(({ word, atS }) => `${word} after ${lasting(atS)}`);
  const x = scaleLinear([0, untilS * 1.01], [LEFT, RIGHT]);
  const top = ROW * (drawn.length + 1);
  const bottom = top + charts.length * (CHART + GAP);
  return (
    <View style={sheet.drawing} wrap={false}>
      <Text style={sheet.caption}>
        {`The course when nobody comes and it begins on a ${hourSaid(trajectory.onsetHour)}. Full line: ${speech.names.tank(key)}; thin lines: the other tanks. Hatched: beyond a limit.${later.length > 0 ? ` Not on the axis: ${later.join(', ')}.` : ''}`}
      </Text>
      <Svg viewBox={`0 0 ${WIDTH} ${bottom + 26}`} width={WIDTH} height={bottom + 26}>
        {charts.map((chart, i) => (
          <Chart key={chart.quantity} chart={chart} x={x} y={top + GAP + i * (CHART + GAP)} main={key} />
        ))}
        <Moments moments={drawn} x={x} bottom={bottom} />
        <Times x={x} y={bottom} onsetHour={trajectory.onsetHour} untilS={untilS} />
      </Svg>
    </View>
  );
}

function Chart({ chart, x, y, main }: { chart: QuantityChart; x: Axis; y: number; main: string }) {
  const scale = scaleLinear(chart.domain, [y + CHART, y]);
  const path = line<Point>().digits(2);
  const names = spreadHeights(
    chart.limits.map((limit) => scale(limit.value) + 2),
    8,
  );
  return (
    <G>
      <Text x={LEFT + 4} y={y - 4} style={sheet.chartTitle}>
        {`${chart.title}${chart.unit ? `, ${chart.unit}` : ''}`}
      </Text>
      {scale.ticks(4).map((tick) => (
        <G key={tick}>
          <Line x1={LEFT} x2={RIGHT} y1={scale(tick)} y2={scale(tick)} stroke="#bbbbbb" strokeWidth={0.3} />
          <Text x={LEFT - 4} y={scale(tick) + 2} textAnchor="end" style={sheet.tick}>
            {written(tick, chart.decimals)}
          </Text>
        </G>
      ))}
      {chart.limits.map(({ says, value, direction }, i) => (
        <G key={says}>
          <Path
            d={hatching(
              direction === 'above'
                ? { left: LEFT, right: RIGHT, top: y, bottom: scale(value) }
                : { left: LEFT, right: RIGHT, top: scale(value), bottom: y + CHART },
              5,
            )}
            stroke="#999999"
            strokeWidth={0.3}
          />
          <Line x1={LEFT} x2={RIGHT} y1={scale(value)} y2={scale(value)} stroke="#000000" strokeWidth={0.7} />
          <Text x={RIGHT + 4} y={names[i] ?? 0} style={sheet.tick}>
            {says}
          </Text>
        </G>
      ))}
      {chart.tracks.map(({ tank, timesS, values }) => (
        <Path
          key={tank}
          d={path(simplified(timesS.map((t, i): Point => [x(t), scale(values[i] ?? 0)]))) ?? ''}
          stroke="#000000"
          strokeWidth={tank === main ? 1.2 : 0.4}
          fill="none"
        />
      ))}
    </G>
  );
}

function Moments({ moments, x, bottom }: { moments: CaseMoment[]; x: Axis; bottom: number }) {
  return (
    <G>
      {moments.map(({ kind, atS, word }, i) => {
        const at = x(atS);
        const isRight = at > (LEFT + RIGHT) / 2;
        const says = `${MOMENT_SIGNS[kind]} ${word}${atS === 0 ? '' : `, ${lasting(atS)}`}`;
        return (
          <G key={`${kind} ${String(atS)}`}>
            <Line
              x1={at}
              x2={at}
              y1={ROW * i + 3}
              y2={bottom}
              stroke="#000000"
              strokeWidth={0.5}
              strokeDasharray="2 2"
            />
            <Text
              x={isRight ? at - 3 : at + 3}
              y={ROW * i + 9}
              textAnchor={isRight ? 'end' : 'start'}
              style={sheet.mark}
            >
              {says}
            </Text>
          </G>
        );
      })}
    </G>
  );
}

function Times({ x, y, onsetHour, untilS }: { x: Axis; y: number; onsetHour: number; untilS: number }) {
  return (
    <G>
      <Line x1={LEFT} x2={RIGHT} y1={y} y2={y} stroke="#000000" strokeWidth={0.6} />
      {timeTicks(untilS, (RIGHT - LEFT) / 48).map(({ atS, label }) => (
        <G key={atS}>
          <Line x1={x(atS)} x2={x(atS)} y1={y} y2={y + 3} stroke="#000000" strokeWidth={0.6} />
          <Text x={x(atS)} y={y + 11} textAnchor="middle" style={sheet.tick}>
            {label}
          </Text>
          <Text x={x(atS)} y={y + 19} textAnchor="middle" style={sheet.tick}>
            {wallClock(onsetHour, atS)}
          </Text>
        </G>
      ))}
    </G>
  );
}
