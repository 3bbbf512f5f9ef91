import { fromCustom, readingSaid } from '../../readings/figures';
import type { CalibrationCheck } from '../check';
import type { CalibrationPoint } from '../entry';
import { type Read, readAs, tidy, type TypedLine, typedNumber, wrong } from './typed';

/** Points that a calibration may have. */
const CALIBRATION_POINTS = [1, 2, 3] as const;
/** Slope of an electrode for pH below which it is worn out, %. Common practice, no source. */
const LEAST_SLOPE = 85;

/**
 * Reads a calibration: at each point what is known (`standard-1`), what was read before the instrument was set (`before-1`) and
 * after (`after-1`, left empty when it was not set). A point of which nothing was typed was not taken.
 */
export function readCalibration(check: CalibrationCheck, typed: TypedLine): Read {
  const points: CalibrationPoint[] = [];
  for (const nth of CALIBRATION_POINTS) {
    const names = [`standard-${nth}`, `before-${nth}`, `after-${nth}`] as const;
    if (names.every((name) => typed.figures[name] === undefined)) continue;
    const [standard, before] = [numberAt(check, typed, names[0]), numberAt(check, typed, names[1])];
    if (!standard.ok) return standard;
    if (!before.ok) return before;
    const after = typed.figures[names[2]] === undefined ? null : numberAt(check, typed, names[2]);
    if (after?.ok === false) return after;
    points.push({ standard: standard.value, before: before.value, after: after?.value ?? null });
  }
  if (points.length === 0) return wrong('figure.standard-1', 'type the standard and what was read in it');
  const slope = typed.figures.slope === undefined ? null : typedNumber(typed.figures.slope, 'figure.slope');
  if (slope?.ok === false) return slope;
  if (typed.seen !== 'worked' && typed.seen !== 'failed')
    return wrong('seen', 'choose whether the instrument may go on');
  const value = { kind: 'calibration' as const, points, slope: slope?.value ?? null, fit: typed.seen === 'worked' };
  return readAs(value, value.fit ? doubts(check, typed, points, value.slope) : []);
}

function numberAt({ quantity }: CalibrationCheck, typed: TypedLine, name: string) {
  const number = typedNumber(typed.figures[name], `figure.${name}`);
  return number.ok ? { ok: true as const, value: tidy(fromCustom(quantity, typed.units, number.value)) } : number;
}

/** What speaks against going on with an instrument that is said to be fit. */
function doubts(
  { quantity, within }: CalibrationCheck,
  { units }: TypedLine,
  points: readonly CalibrationPoint[],
  slope: number | null,
): (string | null)[] {
  const said = (figure: number) => readingSaid(quantity, units, figure);
  const off = points.find(({ standard, after, before }) =>
    within === undefined ? false : Math.abs((after ?? before) - standard) > within,
  );
  return [
    off ? `It still reads ${said(off.after ?? off.before)} in ${said(off.standard)}. May it go on?` : null,
    slope !== null && slope < LEAST_SLOPE
      ? `A slope of ${slope} % is below ${LEAST_SLOPE} %, where an electrode counts as worn out. May it go on?`
      : null,
  ];
}
