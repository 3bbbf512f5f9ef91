import { scaleLinear } from 'd3-scale';
import { daySaid, type RotaDayView } from './rota-view';
import style from './rota.module.css';

/** Height of a day, px. */
export const ROW = 40;
const BAR = 15;
/** Width of a letter of the names, px, about. */
const LETTER = 6.2;

interface RowProps {
  day: RotaDayView;
  y: number;
  left: number;
  right: number;
  /** Fill of the hours with nobody. */
  hatch: string;
  now: number;
}

/** One day. A day of 23 or 25 hours fills the same width, and says so. */
export function RotaRow({ day, y, left, right, hatch, now }: RowProps) {
  const x = scaleLinear([day.from, day.to], [left, right]);
  const hours = (day.to - day.from) / 3_600_000;
  return (
    <g>
      <path className={style.rule} d={`M0 ${y}H${right}`} />
      <text className={style.day} x={0} y={y + 16}>
        {daySaid(day.date)}
      </text>
      {hours === 24 ? null : (
        <text className={style.tick} x={0} y={y + 31}>
          {hours} hours
        </text>
      )}
      {day.segments.map(({ from, to, onSite, onCall }) => {
        const span = { x: x(from), width: Math.max(0.5, x(to) - x(from)) };
        if (onSite.length + onCall.length === 0) return <Nobody key={from} {...span} y={y + 3} hatch={hatch} />;
        return (
          <g key={from}>
            {onSite.length > 0 ? (
              <Bar {...span} y={y + 3} names={onSite} bar={style.onSite} text={style.onSiteName} word="on site" />
            ) : null}
            {onCall.length > 0 ? (
              <Bar
                {...span}
                y={y + 3 + BAR + 3}
                names={onCall}
                bar={style.onCall}
                text={style.onCallName}
                word="on call"
              />
            ) : null}
          </g>
        );
      })}
      {now >= day.from && now < day.to ? <path className={style.now} d={`M${x(now)} ${y}v${ROW}`} /> : null}
    </g>
  );
}

interface BarProps {
  x: number;
  y: number;
  width: number;
  names: string[];
  bar: string | undefined;
  text: string | undefined;
  word: string;
}

function Bar({ x, y, width, names, bar, text, word }: BarProps) {
  const said = fitting(
    [`${names.join(', ')}, ${word}`, names.join(', '), names.map(firstWord).join(', '), word],
    width,
  );
  return (
    <>
      <rect className={bar} x={x + 0.5} y={y} width={Math.max(0.5, width - 1)} height={BAR} />
      <text className={text} x={x + 4} y={y + 11}>
        {said}
      </text>
    </>
  );
}

function Nobody({ x, y, width, hatch }: { x: number; y: number; width: number; hatch: string }) {
  const word = fitting(['nobody'], width);
  const height = 2 * BAR + 3;
  return (
    <>
      <rect className={style.nobody} x={x + 0.5} y={y} width={Math.max(0.5, width - 1)} height={height} />
      <rect x={x + 0.5} y={y} width={Math.max(0.5, width - 1)} height={height} fill={hatch} />
      {word ? (
        <>
          <rect className={style.plate} x={x + 3} y={y + height / 2 - 8} width={word.length * LETTER + 4} height={16} />
          <text className={style.nobodyName} x={x + 5} y={y + height / 2 + 4}>
            {word}
          </text>
        </>
      ) : null}
    </>
  );
}

function firstWord(name: string): string {
  return name.split(' ')[0] ?? name;
}

/** The first of several wordings that a bar is wide enough for; nothing when none is. */
function fitting(wordings: readonly string[], width: number): string {
  return wordings.find((words) => words.length * LETTER + 8 <= width) ?? '';
}
