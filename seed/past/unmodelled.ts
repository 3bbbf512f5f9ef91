import type { ResolvedDevice } from '#core/equipment/resolved';
import type { System } from '#core/facility/system';
import type { Random } from './random';

/**
 * What the model leaves out of a system and readings show all the same: the day's light, meals, acid and alkali, worn and
 * cleaned pumps. Figures are common practice, no source.
 */
export interface Habits {
  /** When it was fed, ms since 1970, in order. */
  fedMs: readonly number[];
  /** g/m³ of oxygen by which a meal lowers the water at most. */
  meal: number;
  /** g/m³ that light adds or darkness takes at a moment. */
  light: (atMs: number) => number;
  /** Part of a clean pump's flow that is left. */
  clean: (atMs: number) => number;
  /** By which a hand with a bucket strays from the salinity meant. */
  salt: (atMs: number) => number;
  ph: { mean: number; swing: number; sinks: (atMs: number) => number };
  /** Part of its rated power that each piece draws, by key. */
  draws: ReadonlyMap<string, number>;
  /** Seconds of the day on the site's clock. */
  clockS: (atMs: number) => number;
}

const HOUR_MS = 3_600_000;
const DAY_S = 86_400;
/** Days between cleanings of pumps and pipes. */
const CLEANED_EVERY = 24;

/** What is usual in a kind of system: the middle of its pH, and how far day and night are apart. */
function acidity({ kind, salinity }: System): { mean: number; swing: number } {
  if (kind === 'reef' || kind === 'coral-farm') return { mean: 8.12, swing: 0.11 };
  if (kind === 'tropical-fresh') return { mean: 6.9, swing: 0.05 };
  return { mean: (salinity.value ?? 0) > 5 ? 7.95 : 7.5, swing: 0.03 };
}

/**
 * @param fedMs     when it was fed
 * @param fromMs    when the past begins
 * @param clockS    seconds of the day at the site
 */
export function habitsOf(
  system: System,
  random: Random,
  { fedMs, fromMs, clockS }: { fedMs: readonly number[]; fromMs: number; clockS: (atMs: number) => number },
): Habits {
  const { mean, swing } = acidity(system);
  const lit = system.equipment.some(({ type }) => type === 'light');
  const [dirt, phase, carried, sink] = [
    random.between(0.03, 0.08),
    random.between(0, 20),
    random.between(0.05, 0.2),
    random.between(0.03, 0.08),
  ];
  const days = (atMs: number) => (atMs - fromMs) / (24 * HOUR_MS);
  const cycle = (atMs: number, every: number) => ((days(atMs) + phase) % every) / every;
  const sun = (atMs: number) => Math.sin((2 * Math.PI * (clockS(atMs) - 11 * 3600)) / DAY_S);
  return {
    fedMs,
    meal: random.between(0.12, 0.3),
    light: (atMs) => (lit ? 0.16 : 0.02) * sun(atMs),
    clean: (atMs) => 1 - dirt * cycle(atMs, CLEANED_EVERY),
    salt: (atMs) => carried * Math.sin(2 * Math.PI * cycle(atMs, 9)),
    ph: { mean: mean + random.between(-0.04, 0.04), swing, sinks: (atMs) => -sink * cycle(atMs, 14) },
    draws: new Map(
      system.equipment.map(({ key, wattsRange, ratedW }) => [key, share(random, wattsRange, ratedW?.value)]),
    ),
    clockS,
  };
}

/** A healthy piece draws what its range says, well away from either end. */
function share(
  random: Random,
  range: { minW: number; maxW: number } | undefined,
  rated: number | null | undefined,
): number {
  if (!range || !rated) return random.between(0.92, 1.04);
  return (range.minW + (range.maxW - range.minW) * random.between(0.35, 0.6)) / rated;
}

/** How long a meal is felt: it sets in within half an hour and is gone after some hours. */
const MEAL_MS = 5 * HOUR_MS;

/** g/m³ by which the last meals lower the oxygen at a moment; never more than a third of what is there. */
export function respirationAfterFeed({ fedMs, meal }: Habits, atMs: number, there: number): number {
  let sum = 0;
  for (let i = lastBefore(fedMs, atMs); i >= 0; i--) {
    const since = atMs - (fedMs[i] ?? 0);
    if (since > MEAL_MS) break;
    const hours = since / HOUR_MS;
    sum += meal * hours * Math.exp(1 - hours);
  }
  return Math.min(sum, there / 3);
}

function lastBefore(list: readonly number[], atMs: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((list[middle] ?? 0) <= atMs) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** pH at a moment: highest towards evening, sinking from one water change to the next. */
export function phAt({ ph, clockS }: Habits, atMs: number): number {
  const day = Math.sin((2 * Math.PI * (clockS(atMs) - 12.5 * 3600)) / DAY_S);
  return ph.mean + ph.swing * day + ph.sinks(atMs);
}

/** W that a piece draws; next to nothing while it is off. */
export function wattsOf(
  device: ResolvedDevice | undefined,
  drawing: boolean,
  habits: Habits,
  atMs: number,
): number | null {
  if (!device) return null;
  if (!drawing) return 0.3;
  const rated = device.equipment.ratedW?.value ?? device.watts;
  const worn = device.equipment.type.endsWith('pump') ? 1 + 0.04 * (1 - habits.clean(atMs)) : 1;
  return rated * (habits.draws.get(device.equipment.key) ?? 1) * worn;
}
