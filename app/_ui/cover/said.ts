import type { Facility } from '#core/facility/facility';
import type { Way } from '#core/review/people/way';
import type { AlikeStretches } from '#core/review/people/alike';
import { dayName } from '../plot/time-ticks';
import { lasting } from '../words/lasting';

const KIND_WORDS = { 'on-site': 'on site', 'on-call': 'on call', 'from-home': 'called at home' } as const;
const HOURS_OF_DAY = 24;

/** Time to spare in words that need no sign: "3.2 h too late". @param spareS s; −Infinity where nobody ever comes */
export function spareSaid(spareS: number): string {
  if (spareS === Number.NEGATIVE_INFINITY) return 'nobody comes';
  return spareS > 0 ? `${lasting(spareS)} to spare` : `${lasting(spareS)} too late`;
}

/** Who would come, by name and how. */
export function whoSaid(way: Way | null, { people, rounds }: Pick<Facility, 'people' | 'rounds'>): string {
  if (!way) return 'nobody';
  const name = (key: string) => people.find((one) => one.key === key)?.name ?? key;
  if (way.come) return `${name(way.come.person)}, ${KIND_WORDS[way.come.kind]}`;
  const round = rounds.find(({ key }) => key === way.key)?.name ?? way.key;
  return `${way.walkers.map(name).join(' or ')}, on the round “${round}”`;
}

/** What notices it, by name. */
function noticedSaid(way: Way, facility: Facility, system: string): string {
  if (way.by === 'watchdog') return 'the watch outside the site';
  if (way.by === 'round') return `the round “${facility.rounds.find(({ key }) => key === way.key)?.name ?? way.key}”`;
  const alarms = facility.systems.find(({ key }) => key === system)?.alarms ?? [];
  return `the alarm “${alarms.find(({ key }) => key === way.key)?.name ?? way.key}”`;
}

/** What the time to put right is made of, part by part, and the last chance beside it. @param lastS s after the onset */
export function partsSaid(way: Way | null, lastS: number, facility: Facility, system: string): string {
  const chance = lastS < 1 ? 'Nothing done after it begins avoids harm' : `Last chance after ${lasting(lastS)}`;
  if (!way) return `${chance}; nobody ever puts it right.`;
  const { come, noticeS, workS, putRightS } = way;
  const parts = [
    `${noticedSaid(way, facility, system)} tells of it after ${lasting(noticeS)}`,
    come && come.waitS > 0 ? `${lasting(come.waitS)} until they come on duty` : '',
    come ? `${lasting(come.answerS)} to answer` : '',
    come && come.travelS > 0 ? `${lasting(come.travelS)} on the way` : '',
    `${lasting(workS)} of work`,
  ];
  return `${chance}; put right after ${lasting(putRightS)}: ${parts.filter(Boolean).join(', ')}.`;
}

const clock = (hour: number) => `${String(hour % HOURS_OF_DAY).padStart(2, '0')}:00`;

/** The hours of stretches in words: "Mon to Fri 17:00 to 08:00". */
export function hoursSaid({ days, from, hours }: Pick<AlikeStretches, 'days' | 'from' | 'hours'>): string {
  if (hours >= 7 * HOURS_OF_DAY) return 'every hour of the week';
  const end = from + hours;
  const isSameDay = Math.floor((end - 1) / HOURS_OF_DAY) === Math.floor(from / HOURS_OF_DAY);
  const isLong = hours > HOURS_OF_DAY;
  const last = isLong ? `${dayName(Math.floor(end / HOURS_OF_DAY) % 7)} ${clock(end)}` : clock(end);
  return `${daysSaid(days)} ${clock(from)} to ${last}${isSameDay || isLong ? '' : ' next day'}`;
}

/** Days of the week: runs of three and more by their ends. */
function daysSaid(days: readonly number[]): string {
  if (days.length === 7) return 'every day';
  const runs: [number, number][] = [];
  for (const day of days) {
    const last = runs.at(-1);
    if (last && day === last[1] + 1) last[1] = day;
    else runs.push([day, day]);
  }
  return runs
    .map(([a, b]) =>
      a === b ? dayName(a) : b === a + 1 ? `${dayName(a)}, ${dayName(b)}` : `${dayName(a)} to ${dayName(b)}`,
    )
    .join(', ');
}
