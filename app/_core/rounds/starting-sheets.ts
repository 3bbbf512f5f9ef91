import type { Facility } from '../facility/facility';
import type { Check } from './check';
import { describedPlaces } from './described';
import type { RoundSheet } from './round-sheet';
import { firstDayOf } from './first-day';
import type { DueTime } from './schedule';

/** One sheet that a system may start with. What stands on it at which frequency: common practice, no source. */
interface Start {
  end: string;
  name: string;
  rule: string;
  times: DueTime[];
  takes: (check: Check) => boolean;
  secondSignature?: true;
}

const MORNING: DueTime = { at: '08:00', anchor: 'opening', afterMin: -60 };
const EVENING: DueTime = { at: '18:00', anchor: 'closing', afterMin: -60 };
const DAILY = 'FREQ=DAILY';
const WEEKLY = 'FREQ=WEEKLY;BYDAY=TU';
const MONTHLY = 'FREQ=MONTHLY;BYDAY=1WE';
const QUARTERLY = 'FREQ=MONTHLY;INTERVAL=3;BYDAY=1TH';
const YEARLY = 'FREQ=MONTHLY;INTERVAL=12;BYDAY=1TH';
/** Days within which a safeguard is to be tested, up to which its test is asked each month, and each quarter. */
const MONTH_DAYS = 62;
const QUARTER_DAYS = 182;

const isAnimal = ({ kind, key }: Check) => kind === 'head-count' || key.endsWith('/animals');
const isWater = ({ kind }: Check) => kind === 'water-test';
/** Read once a day; what else sensors read belongs to the plant. */
const DAY_READ = ['temperature', 'salinity', 'ph'];
const isDayRead = (check: Check) => check.kind === 'number' && DAY_READ.includes(check.quantity);
const isCalibration = (check: Check, warm: boolean) =>
  check.kind === 'calibration' && (check.quantity === 'temperature') === warm;
const isTest = (check: Check, from: number, to: number) =>
  check.kind === 'test' && check.everyDays > from && check.everyDays <= to;
const isApart = (check: Check) => isWater(check) || check.kind === 'calibration' || check.kind === 'test';

const STARTS: readonly Start[] = [
  {
    end: 'plant',
    name: 'plant, each shift',
    rule: DAILY,
    times: [MORNING, EVENING],
    takes: (check) => !(isApart(check) || isAnimal(check) || isDayRead(check)),
  },
  {
    end: 'animals',
    name: 'animals, first and last thing',
    rule: DAILY,
    times: [MORNING, EVENING],
    takes: isAnimal,
  },
  { end: 'readings', name: 'readings, daily', rule: DAILY, times: [MORNING], takes: isDayRead },
  { end: 'water', name: 'water tests, weekly', rule: WEEKLY, times: [{ at: '10:00' }], takes: isWater },
  {
    end: 'month',
    name: 'tests and calibrations, monthly',
    rule: MONTHLY,
    times: [{ at: '10:00' }],
    takes: (check) => isTest(check, 0, MONTH_DAYS) || isCalibration(check, false),
  },
  {
    end: 'quarter',
    name: 'tests and thermometers, quarterly',
    rule: QUARTERLY,
    times: [{ at: '10:00' }],
    takes: (check) => isTest(check, MONTH_DAYS, QUARTER_DAYS) || isCalibration(check, true),
  },
  {
    end: 'year',
    name: 'tests, yearly',
    rule: YEARLY,
    times: [{ at: '10:00' }],
    takes: (check) => isTest(check, QUARTER_DAYS, Number.POSITIVE_INFINITY),
    secondSignature: true,
  },
];

/**
 * The sheets that a system may start with, by how often each is walked: its plant each shift, its animals first and last
 * thing, readings daily, water tests weekly, tests and calibrations by their intervals. What would be empty is left out.
 * @param system   key of the system; null for what belongs to the whole site
 * @param day      first day on which one may be due, ISO date
 */
export function startingSheets(facility: Facility, system: string | null, day: string): RoundSheet[] {
  const places = describedPlaces(facility, day).filter((place) => (place.system?.key ?? null) === system);
  const checks = places.flatMap((place) => place.checks);
  const of = facility.systems.find(({ key }) => key === system)?.name ?? facility.site.name;
  return STARTS.flatMap(({ end, name, rule, times, takes, secondSignature }) => {
    const lines = checks.filter(takes).map(({ key }) => ({ kind: 'described' as const, key }));
    const from = firstDayOf(rule, day);
    if (lines.length === 0 || from === null) return [];
    const key = `${system ?? facility.site.key}-${end}`.slice(0, MOST_KEY);
    const sheet = { key, name: `${of}: ${name}`, schedule: { rule, from, times }, lines };
    return [{ ...sheet, ...(secondSignature && { secondSignature }) }];
  });
}

/** Longest key of a thing. */
const MOST_KEY = 64;
