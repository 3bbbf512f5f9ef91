import { unionisedShare } from '../water/unionised-ammonia';

/**
 * Un-ionised share of ammonia at a pH on the NBS scale, from parabolas over small cells of temperature and salinity: the law
 * costs a dozen powers, and a run asks for it at every step of every tank. The share so found is off by less than two
 * millionths of itself; in fresh and nearly fresh water, where the law bends sharply, and outside the cells the law is asked.
 */
const COLDEST = -4;
const HOTTEST = 44;
const FRESHEST = 3;
const SALTIEST = 46;
/** Size of a cell, K and practical salinity; every bend of the law in salinity lies on an edge. */
const CELL = 0.5;
const COLUMNS = Math.round(SALTIEST / CELL);
/** What the parabola is fitted with, to each side of the middle. */
const BESIDE = 0.2;
/** Any pH does: what is kept is the pK. */
const AT_PH = 8;
const TERMS = 6;

const CELLS = new Float64Array(TERMS * COLUMNS * Math.round((HOTTEST - COLDEST) / CELL)).fill(Number.NaN);

/** pK of ammonia against a pH on the NBS scale. */
function pk(temperature: number, salinity: number): number {
  const share = unionisedShare(AT_PH, 'nbs', temperature, salinity);
  return AT_PH + Math.log10((1 - share) / share);
}

/** Terms of a cell: 1, t, s, t², ts, s² round its middle. Always the same, so that they may be kept. */
function fill(at: number, t: number, s: number): void {
  const h = BESIDE;
  const middle = pk(t, s);
  const [warm, cold, salty, fresh] = [pk(t + h, s), pk(t - h, s), pk(t, s + h), pk(t, s - h)];
  const cross = pk(t + h, s + h) - pk(t + h, s - h) - pk(t - h, s + h) + pk(t - h, s - h);
  CELLS.set(
    [
      middle,
      (warm - cold) / (2 * h),
      (salty - fresh) / (2 * h),
      (warm + cold - 2 * middle) / (2 * h * h),
      cross / (4 * h * h),
      (salty + fresh - 2 * middle) / (2 * h * h),
    ],
    at,
  );
}

/** As `unionisedShare(ph, 'nbs', temperature, salinity)`, to two millionths. °C, practical salinity; 0 to 1. */
export function shareOfAmmonia(ph: number, temperature: number, salinity: number): number {
  if (!(salinity >= FRESHEST && salinity < SALTIEST && temperature >= COLDEST && temperature < HOTTEST))
    return unionisedShare(ph, 'nbs', temperature, salinity);
  const row = Math.floor((temperature - COLDEST) / CELL);
  const column = Math.floor(salinity / CELL);
  const at = TERMS * (row * COLUMNS + column);
  const middleT = COLDEST + (row + 0.5) * CELL;
  const middleS = (column + 0.5) * CELL;
  if (Number.isNaN(CELLS[at] as number)) fill(at, middleT, middleS);
  const t = temperature - middleT;
  const s = salinity - middleS;
  const found =
    (CELLS[at] as number) +
    t * ((CELLS[at + 1] as number) + t * (CELLS[at + 3] as number) + s * (CELLS[at + 4] as number)) +
    s * ((CELLS[at + 2] as number) + s * (CELLS[at + 5] as number));
  return 1 / (1 + Math.exp(Math.LN10 * (found - ph)));
}
