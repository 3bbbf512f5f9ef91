import type { StateSpell } from '#core/alarms/condition';
import type { Facility } from '#core/facility/facility';
import { befallenAt, outagesOf } from './befallen';
import { addDays } from '#core/time/add-days';
import { type PastTest, pastTests } from './ledger';
import { type PastRound, pastRounds } from './rounds';
import { type Life, livesOf } from './lives';
import type { PastIncident } from './incidents';
import { pastIncidents } from './past-incidents';
import { type Loss, lossesAt } from './losses';
import { addOddities } from './oddities';
import { raisedAt, type Watched } from './raised';
import { type SystemPast, type SystemTold, systemPast } from './readings-of';
import { DAYS_BACK, daysBack, type LocalDay } from './span';
import { toldAt } from './told-alarms';

/** The past of a site of the demonstration: the same for the same day and minute, whoever asks. Nothing but plain data. */
export interface Past {
  facility: Facility;
  /** ISO date on which it is shown. */
  today: string;
  days: LocalDay[];
  untilMs: number;
  /** By key of the system; those that cannot be reckoned with are left out. */
  systems: ReadonlyMap<string, SystemTold>;
  losses: Loss[];
  tests: PastTest[];
  rounds: PastRound[];
  /** Where every alarm stands now, and each time one was raised. */
  watched: Watched[];
  lives: Life[];
  incidents: PastIncident[];
}

/** States that systems were put into, as alarms see them. */
function spellsOf(systems: ReadonlyMap<string, SystemPast>): StateSpell[] {
  return [...systems.values()].flatMap(({ states }) =>
    states.map(({ system, state, fromMs, untilMs, endedMs }) => ({ system, state, fromMs, untilMs, toMs: endedMs })),
  );
}

/** To which the moment it is shown at is rounded down. */
const MINUTE_MS = 60_000;

/**
 * @param facility   with its dates as of `today`
 * @param today      ISO date at the site
 * @param nowMs      ms since 1970, on that day
 */
export function pastOf(facility: Facility, today: string, nowMs: number): Past {
  const days = daysBack(facility.site.zone, today);
  const untilMs = Math.floor(nowMs / MINUTE_MS) * MINUTE_MS;
  const outages = outagesOf(facility, today, DAYS_BACK);
  const befallen = befallenAt(facility, today);
  const systems = new Map<string, SystemPast>();
  for (const system of facility.systems) {
    const past = systemPast(facility, system, { days, untilMs }, outages, befallen.get(system.key));
    if (past) systems.set(system.key, past);
  }
  const series = [...systems.values()].flatMap((past) => past.series);
  addOddities(facility, series, { today, untilMs });
  const tests = pastTests(facility, addDays(today, -DAYS_BACK - 1), untilMs);
  const rounds = pastRounds(facility, systems, { days, untilMs, tests, today });
  const watched = raisedAt(facility, series, spellsOf(systems), { fromMs: days[0]?.fromMs ?? 0, untilMs });
  const raised = watched.flatMap((one) => one.raised);
  const lives = livesOf(facility, raised, toldAt(facility, today), untilMs);
  const incidents = pastIncidents(facility, { today, untilMs, lives, series });
  return {
    facility,
    today,
    days,
    untilMs,
    systems: new Map([...systems].map(([key, told]) => [key, { series: told.series, states: told.states }])),
    incidents,
    losses: lossesAt(facility, today),
    tests,
    rounds,
    watched,
    lives,
  };
}
