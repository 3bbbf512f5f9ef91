import { G, Line, Path, Svg, Text, View } from '@react-pdf/renderer';
import { extent } from 'd3-array';
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { HOURS_OF_WEEK } from '#core/time/week';
import { type CoverPoint, coverPoints } from '../case/cover-points';
import { bareSaid } from '../case/bare-said';
import type { Stretch } from '../case/rota-lanes';
import type { CoverBlock } from '../document/block';
import { toldColumn } from '../document/parts/tell-case';
import { dayName } from '../plot/time-ticks';
import { sheet, WIDTH } from './sheet';

const LEFT = 40;
const TOP = 6;
const HEIGHT = 80;
/** No deeper and no higher than this is the curve followed, h. */
const DEEPEST = -36;
const HIGHEST = 36;

type Axis = ScaleLinear<number, number>;

/** Time to spare over the hours of the week as a drawing; the hours with nothing to spare are hatched. */
export function PaperCover({ block: { faultCase, lanes } }: { block: CoverBlock }) {
  const [outcome] = faultCase[toldColumn(faultCase)].outcomes;
  if (!outcome) return null;
  const points = coverPoints(outcome);
  const x = scaleLinear([0, HOURS_OF_WEEK], [LEFT, WIDTH]);
  const [least = 0, most = 0] = extent(points, (p) => p.spareH);
  const domain = [Math.max(DEEPEST, Math.min(-1, least)), Math.min(HIGHEST, Math.max(1, most))];
  const y = scaleLinear(domain, [TOP + HEIGHT, TOP]).nice(4);
  const bottom = TOP + HEIGHT;
  return (
    <View style={sheet.drawing} wrap={false}>
      <Text
        style={sheet.caption}
      >{`Cover chart, hours to spare by the hour at which it begins. ${bareSaid(points)}`}</Text>
      <Svg viewBox={`0 0 ${WIDTH} ${bottom + 52}`} width={WIDTH} height={bottom + 52}>
        {y.ticks(5).map((tick) => (
          <G key={tick}>
            <Line x1={LEFT} x2={WIDTH} y1={y(tick)} y2={y(tick)} stroke="#bbbbbb" strokeWidth={0.3} />
            <Text x={LEFT - 4} y={y(tick) + 2} textAnchor="end" style={sheet.tick}>
              {tick > 0 ? `+${tick}` : String(tick).replace('-', '−')}
            </Text>
          </G>
        ))}
        <Path d={bareStrokes(points, x, y)} stroke="#555555" strokeWidth={0.6} />
        <Path d={curve(points, x, y)} stroke="#000000" strokeWidth={1} fill="none" />
        <Line x1={LEFT} x2={WIDTH} y1={y(0)} y2={y(0)} stroke="#000000" strokeWidth={0.8} />
        <Days x={x} bottom={bottom} />
        <Lane name="on site" stretches={lanes.onSite} x={x} y={bottom + 16} />
        <Lane name="on call" stretches={lanes.onCall} x={x} y={bottom + 27} />
        <Lane name="rounds" stretches={lanes.rounds.map((h): Stretch => [h, h + 0.4])} x={x} y={bottom + 38} />
      </Svg>
    </View>
  );
}

function level({ spareH }: CoverPoint, y: Axis): number {
  const [low = 0, high = 0] = y.domain();
  return y(Math.min(high, Math.max(low, spareH ?? 0)));
}

function curve(points: CoverPoint[], x: Axis, y: Axis): string {
  const shape = line<CoverPoint>()
    .defined((p) => p.spareH !== null)
    .x((p) => x(p.hour + 0.5))
    .y((p) => level(p, y));
  return shape(points) ?? '';
}

/** A stroke from nothing to spare down to the curve, at every hour that lies below it. */
function bareStrokes(points: CoverPoint[], x: Axis, y: Axis): string {
  return points
    .filter(({ spareH }) => spareH !== null && spareH <= 0)
    .map((point) => `M${x(point.hour + 0.5).toFixed(2)} ${y(0).toFixed(2)}V${level(point, y).toFixed(2)}`)
    .join('');
}

function Days({ x, bottom }: { x: Axis; bottom: number }) {
  const days = Array.from({ length: 7 }, (_, day) => day);
  return (
    <G>
      {days.map((day) => (
        <G key={day}>
          <Line x1={x(24 * day)} x2={x(24 * day)} y1={TOP} y2={bottom + 10} stroke="#777777" strokeWidth={0.4} />
          <Text x={x(24 * day + 12)} y={bottom + 9} textAnchor="middle" style={sheet.tick}>
            {dayName(day)}
          </Text>
        </G>
      ))}
    </G>
  );
}

function Lane({ name, stretches, x, y }: { name: string; stretches: Stretch[]; x: Axis; y: number }) {
  return (
    <G>
      <Text x={LEFT - 4} y={y + 5} textAnchor="end" style={sheet.tick}>
        {name}
      </Text>
      {stretches.map(([from, to]) => (
        <Line key={from} x1={x(from)} x2={x(to)} y1={y + 3} y2={y + 3} stroke="#000000" strokeWidth={3} />
      ))}
    </G>
  );
}
