import type { Equipment, System } from '../facility/system';
import { type Fall, fallsOf } from './falling';
import { type ClockS, isWithin } from './lump';
import { both, type Point, runsWithin, type Span, type Stretch, usualStepMs } from './stretch';
import { hasSwitched, meanWatts, spansOf, type Watts } from './switched';

/** What was read of a system while its heat loss is looked for. */
export interface HeatReadings {
  /** Of one probe, °C. */
  temperature: readonly Point[];
  /** By key of the equipment. */
  watts: ReadonlyMap<string, readonly Watts[]>;
  /** How slowly the probe follows, s. */
  lagS: number;
}

/** Pieces of time in which the water cooled by itself, and what was found and could not be used. */
export interface Cooling {
  stretches: Stretch[];
  /** How it is known that nothing heated: by power that was read, or by what the plans say. */
  by: 'watts' | 'plan' | 'nothing-heats';
  /** Stretches given up because something else was switched on or off meanwhile. */
  switched: number;
}

/** Night on the site's clock: no visitors, no open doors. Common practice, no source. */
const NIGHT = { from: '20:00', to: '08:00' };
/** The least that is worth a fit, and the most that are taken: the longest. Common practice, no source. */
const LEAST_S = 40 * 60;
const LEAST_POINTS = 5;
const MOST = 16;
/** K by which a probe of a heater and that of the fit may differ. Common practice, no source. */
const NEAR = 0.2;
/** Time constants after which a late probe has caught up. */
const CAUGHT_UP = 3;

/**
 * Finds when nothing heated or cooled the water at night.
 *
 * @param system   as described
 * @param keys     keys of the tanks that mix
 */
export function coolingStretches(
  system: System,
  keys: ReadonlySet<string>,
  { temperature, watts, lagS }: HeatReadings,
  clockS: ClockS,
): Cooling {
  const here = system.equipment.filter(({ tank }) => keys.has(tank));
  const heating = here.filter(({ type }) => type === 'heater' || type === 'chiller');
  const read = heating.filter(({ key }) => (watts.get(key)?.length ?? 0) > 1);
  const unread = heating.filter((one) => !read.includes(one));
  const lamps = here.filter(({ type }) => type === 'light');
  let spans = nights(temperature, clockS, lamps);
  for (const { key } of read) spans = both(spans, spansOf(watts.get(key) ?? [], 'off'));
  if (unread.length > 0) spans = both(spans, restByPlan(temperature, unread));
  const skipMs = CAUGHT_UP * lagS * 1000;
  const found = spans
    .flatMap(({ fromMs, toMs }) => runsWithin(temperature, { fromMs: fromMs + skipMs, toMs }))
    .filter(isWorth);
  const steady = found.filter((points) => !isSwitched(here, heating, watts, spanOf(points)));
  return {
    stretches: steady
      .sort((a, b) => lengthOf(b) - lengthOf(a))
      .slice(0, MOST)
      .map((points) => ({ key: `cooling-${points[0]?.atMs ?? 0}`, ...spanOf(points), points }))
      .sort((a, b) => a.fromMs - b.fromMs),
    by: heating.length === 0 ? 'nothing-heats' : unread.length === 0 ? 'watts' : 'plan',
    switched: found.length - steady.length,
  };
}

/** The nights that readings reach over, without the hours in which a lamp is on. */
function nights(points: readonly Point[], clockS: ClockS, lamps: readonly Equipment[]): Span[] {
  const spans: Span[] = [];
  let open: Span | null = null;
  for (const { atMs } of points) {
    const at = clockS(atMs);
    const lit = lamps.some(
      ({ plan: { regulation } }) =>
        regulation.kind === 'always' || (regulation.kind === 'hours' && isWithin(regulation, at)),
    );
    if (!isWithin(NIGHT, at) || lit) open = null;
    else if (open) open.toMs = atMs;
    else {
      open = { fromMs: atMs, toMs: atMs };
      spans.push(open);
    }
  }
  return spans;
}

/** Where the water fell although no power was read: above where any heater comes on, below where any chiller does. */
function restByPlan(points: readonly Point[], unread: readonly Equipment[]): Span[] {
  const bands = unread.flatMap(({ type, plan: { regulation } }) =>
    regulation.kind === 'thermostat' ? [{ type, low: regulation.lowC, high: regulation.highC }] : [],
  );
  if (bands.length < unread.length) return [];
  const heaters = bands.filter(({ type }) => type === 'heater');
  const chillers = bands.filter(({ type }) => type === 'chiller');
  const stepMs = usualStepMs(points);
  const rests = ({ from, to }: Fall) =>
    heaters.every(({ low, high }) => from >= high - NEAR && to >= low - NEAR) &&
    chillers.every(({ low }) => from <= low + NEAR);
  // Around the trough the heater may be on already, and the probe late.
  return fallsOf(points)
    .filter(rests)
    .map(({ fromMs, toMs }) => ({ fromMs: fromMs + stepMs, toMs: toMs - 2 * stepMs }));
}

/** Whether a pump or lamp was switched meanwhile, or the return stood. */
function isSwitched(
  here: readonly Equipment[],
  heating: readonly Equipment[],
  watts: ReadonlyMap<string, readonly Watts[]>,
  span: Span,
): boolean {
  return here.some((one) => {
    const read = watts.get(one.key);
    if (!read || heating.includes(one) || one.type === 'top-off') return false;
    const stands = one.type === 'return-pump' && (meanWatts(read, span) ?? Number.POSITIVE_INFINITY) < 1;
    return stands || hasSwitched(read, span);
  });
}

function isWorth(points: readonly Point[]): boolean {
  return points.length >= LEAST_POINTS && lengthOf(points) >= LEAST_S * 1000;
}

function lengthOf(points: readonly Point[]): number {
  const { fromMs, toMs } = spanOf(points);
  return toMs - fromMs;
}

function spanOf(points: readonly Point[]): Span {
  return { fromMs: points[0]?.atMs ?? 0, toMs: points.at(-1)?.atMs ?? 0 };
}
