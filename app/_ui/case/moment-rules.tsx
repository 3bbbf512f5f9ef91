import { MomentShape } from '../marks/moment-shape';
import { spreadLabels } from '../plot/spread-labels';
import type { CaseMoment } from './case-moments';
import { lasting } from '../words/lasting';
import style from './plot.module.css';

const ROW = 20;
/** About as wide as a letter of the labels, px. */
const LETTER = 6.4;

interface MomentRulesProps {
  moments: CaseMoment[];
  x: (atS: number) => number;
  right: number;
  /** Where the rules end, px. */
  bottom: number;
}

/** Height that the labels of some moments take, px. */
export function momentRows({ moments, x, right }: Omit<MomentRulesProps, 'bottom'>): number {
  return ROW * Math.max(1, ...placesOf(moments, x, right).map((place) => place.row + 1));
}

function saysOf({ word, atS }: CaseMoment): string {
  return atS === 0 ? word : `${word}, ${lasting(atS)}`;
}

function placesOf(moments: CaseMoment[], x: (atS: number) => number, right: number) {
  return spreadLabels(
    moments.map((m) => ({ x: x(m.atS) - 8, width: 24 + LETTER * saysOf(m).length })),
    right,
  );
}

/** The moments as labelled rules through every chart: shape, word and time at the head of each. */
export function MomentRules({ moments, x, right, bottom }: MomentRulesProps) {
  const places = placesOf(moments, x, right);
  return (
    <g>
      {moments.map((moment, i) => {
        const { row, left } = places[i] ?? { row: 0, left: false };
        const at = x(moment.atS);
        const y = 10 + ROW * row;
        return (
          <g key={`${moment.kind}${moment.atS}`}>
            <path className={style.rule} data-moment={moment.kind} d={`M${at} ${y}V${bottom}`} />
            <MomentShape kind={moment.kind} x={at} y={y} />
            <text className={style.moment} x={left ? at - 12 : at + 12} y={y + 4} textAnchor={left ? 'end' : 'start'}>
              {saysOf(moment)}
            </text>
          </g>
        );
      })}
    </g>
  );
}
