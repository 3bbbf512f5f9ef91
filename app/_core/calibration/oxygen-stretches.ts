import type { Equipment, System } from '../facility/system';
import type { ClockS } from './lump';
import { runsWithin, type Point, type Span, type Stretch } from './stretch';
import { hasSwitched, spansOf, stopsOf, type Watts } from './switched';

/** How a stretch of oxygen came about. */
export type OxygenWhy = 'lights-out' | 'stopped' | 'started-again';

/** A stretch in which oxygen ran towards a new level. */
export interface OxygenStretch extends Stretch {
  why: OxygenWhy;
  /** What was switched, by name. */
  by: string;
  /** Key of the equipment that stood; null where all of it ran. */
  stopped: string | null;
}

/** What was read of a system while its gas exchange is looked for. */
export interface OxygenReadings {
  /** Of one probe, mg/L. */
  oxygen: readonly Point[];
  watts: ReadonlyMap<string, readonly Watts[]>;
  lagS: number;
}

/** Equipment that brings air or moves water. */
const MOVES = new Set<Equipment['type']>(['return-pump', 'circulation-pump', 'skimmer', 'air-blower', 'filter']);
/** How long oxygen is followed after lamps went out and after something ran again, ms. Common practice, no source. */
const AFTER_LIGHT_MS = 5 * 3_600_000;
const AFTER_START_MS = 2 * 3_600_000;
const LEAST_POINTS = 5;
/** Time constants after which a late probe has caught up. */
const CAUGHT_UP = 3;

/**
 * Finds when lamps went out, and when something that moves air or water stopped and ran again.
 *
 * @param keys   keys of the tanks that mix
 */
export function oxygenStretches(
  system: System,
  keys: ReadonlySet<string>,
  { oxygen, watts, lagS }: OxygenReadings,
  clockS: ClockS,
): OxygenStretch[] {
  const here = system.equipment.filter(({ tank }) => keys.has(tank));
  const movers = here.filter(({ type }) => MOVES.has(type));
  const isSteady = (span: Span, but?: string) =>
    movers.every(({ key }) => key === but || !hasSwitched(watts.get(key) ?? [], span));
  const found = [
    ...here.filter(({ type }) => type === 'light').flatMap((light) => lightsOut(light, oxygen, clockS)),
    ...movers.flatMap((mover) => stopsAndStarts(mover, watts.get(mover.key) ?? [])),
  ];
  const skipMs = CAUGHT_UP * lagS * 1000;
  return found.flatMap(({ fromMs, toMs, ...told }) =>
    runsWithin(oxygen, { fromMs: fromMs + skipMs, toMs }).flatMap((points): OxygenStretch[] => {
      const span = { fromMs: points[0]?.atMs ?? 0, toMs: points.at(-1)?.atMs ?? 0 };
      if (points.length < LEAST_POINTS || !isSteady(span, told.stopped ?? undefined)) return [];
      return [{ ...told, ...span, key: `${told.why}-${span.fromMs}`, points }];
    }),
  );
}

type Found = Span & Pick<OxygenStretch, 'why' | 'by' | 'stopped'>;

/** The hours after a lamp goes out, each evening that readings reach over. */
function lightsOut({ name, plan: { regulation } }: Equipment, oxygen: readonly Point[], clockS: ClockS): Found[] {
  if (regulation.kind !== 'hours') return [];
  const [hours = 0, minutes = 0] = regulation.to.split(':').map(Number);
  const outS = hours * 3600 + minutes * 60;
  const outs = oxygen.flatMap(({ atMs }, i): number[] => {
    const before = oxygen[i - 1];
    return before && clockS(before.atMs) < outS && clockS(atMs) >= outS ? [atMs - (clockS(atMs) - outS) * 1000] : [];
  });
  return outs.map((atMs) => ({
    fromMs: atMs,
    toMs: atMs + AFTER_LIGHT_MS,
    why: 'lights-out',
    by: name,
    stopped: null,
  }));
}

/** The time that a piece of equipment stood, and the hours after it ran again. */
function stopsAndStarts({ key, name }: Equipment, watts: readonly Watts[]): Found[] {
  const on = spansOf(watts, 'on');
  return stopsOf(watts).flatMap((stop): Found[] => {
    const next = on.find(({ fromMs }) => fromMs > stop.toMs);
    const stood: Found = { ...stop, why: 'stopped', by: name, stopped: key };
    if (!next) return [stood];
    const toMs = Math.min(next.toMs, next.fromMs + AFTER_START_MS);
    return [stood, { fromMs: next.fromMs, toMs, why: 'started-again', by: name, stopped: null }];
  });
}
