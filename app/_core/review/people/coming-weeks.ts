import { taker } from '../../equipment/take';
import type { Facility } from '../../facility/facility';
import type { Stretch } from '../../rota/answering';
import { answerTimes, coverOf } from '../../rota/cover';
import { askedBy, type DatedLine, datedLine } from '../../rota/dated-line';
import { type Line, usualLine } from '../../rota/line';
import type { Turn } from '../../rota/turns';
import { addDays } from '../../time/add-days';
import type { Instant } from '../../time/zone';
import type { SystemDemand } from './demand';
import { datedLooks } from './dated-looks';
import { type Scene, scenesOn, usualScenes } from './scene';
import { decided, leastHours, type SystemCover, systemCover } from './system-cover';
import { weakStretches, type WeakStretch } from './weakest';

/** A coming week that is not as usual, in one system. */
export interface WeekAhead {
  /** "YYYY-MM-DD", a Monday. */
  monday: string;
  /** Hours it has: 167 or 169 where the clocks change by one. */
  lengthH: number;
  system: string;
  /** Least time to spare in the usual week and in this one, s; −Infinity where nobody ever comes. */
  usualS: number;
  spareS: number;
  /** When in this week a fault begins that has the least. */
  at: Instant;
  weakest: WeakStretch;
}

/**
 * The coming weeks that leave less to spare than the usual one, by the duties that were really agreed and the clocks as they will
 * change, as claimed. A week that is as usual is not looked at.
 *
 * @param demands   what the fault cases of the systems ask of people
 * @param monday    of the first week, "YYYY-MM-DD"
 * @param turns     the turns of a stretch of time
 */
export function weeksAhead(
  facility: Facility,
  demands: readonly SystemDemand[],
  monday: string,
  weeks: number,
  turns: (from: Instant, to: Instant) => Turn[],
): WeekAhead[] {
  const { zone } = facility.site;
  const times = answerTimes(facility, taker('nominal'));
  const usual = usualLine(coverOf(facility, taker('nominal')));
  const scenes = usualScenes(facility, monday);
  const known = new Map<string, Usual>();
  const usually = (demand: SystemDemand) => {
    const found = known.get(demand.system) ?? usualOf(systemCover(demand, scenes(demand.system), 'claimed'));
    known.set(demand.system, found);
    return found;
  };
  const mondays = Array.from({ length: weeks }, (_, week) => addDays(monday, 7 * week));
  return mondays.flatMap((day) => {
    const { from, to } = askedBy(zone, day);
    const line = datedLine(zone, day, turns(from, to), times);
    if (isUsual(line, usual)) return [];
    const dated = scenesOn(facility, day, line, (key) => datedLooks(facility, key, line));
    return demands.flatMap((demand) => lessIn(demand, line, dated(demand.system), usually(demand)) ?? []);
  });
}

/** What a system's usual week leaves to spare at least, s, and the fault cases that this is asked of. */
interface Usual {
  drawn: ReadonlySet<string>;
  leastS: number;
}

function usualOf(cover: SystemCover): Usual {
  const cases = decided(cover);
  return { drawn: new Set(cases.map(({ id }) => id)), leastS: Math.min(...cases.flatMap(({ week }) => week.spareS)) };
}

function lessIn(demand: SystemDemand, line: DatedLine, scene: Scene, { drawn, leastS }: Usual): WeekAhead | null {
  const { system } = demand;
  const cases = systemCover(demand, scene, 'claimed').cases.filter(({ id }) => drawn.has(id));
  const stretches = weakStretches(system, leastHours(cases, line.hours.length), false);
  const [weakest] = stretches.sort((a, b) => a.spareS - b.spareS);
  // A second is rounding.
  if (!weakest || weakest.spareS > leastS - 1) return null;
  const at = line.from + 1000 * (line.hours[weakest.worst]?.atS ?? 0);
  const lengthH = (line.to - line.from) / 3_600_000;
  return { monday: line.monday, lengthH, system, usualS: leastS, spareS: weakest.spareS, at, weakest };
}

/** Whether a dated week, and what of the weeks after it is asked for, has the hours and the duties of the usual one. */
function isUsual(dated: DatedLine, usual: Line): boolean {
  const end = Math.max(...dated.hours.map(({ atS }) => atS)) + LOOKED_S;
  const inside = ({ fromS, toS }: Stretch) => toS > 0 && fromS < end;
  const text = ({ stretches, hours }: Line) => {
    const own = stretches.filter(inside).map(({ fromS, toS, kind, person }) => `${fromS} ${toS} ${kind} ${person}`);
    return `${[...new Set(own)].sort().join('|')} ${hours.map(({ atS }) => atS).join()}`;
  };
  return text(dated) === text(usual);
}

/** s after the last hour for which duties make a difference at most: a fault is followed for a week. */
const LOOKED_S = 7 * 86_400;
