import type { Facility } from '#core/facility/facility';
import type { EntryValue } from '#core/rounds/entry';
import { addDays } from '#core/time/add-days';
import { instantOf, wallClock } from '#core/time/zone';
import { poolStory, windowStory } from './story';

/** What is seen on a line that is not as usual. */
type Seen = { value: EntryValue; note: string } | null;

/** Days back from which on, and for how many days, a number was written down without looking. */
const COPIED = { line: 'reef/sensor/nitrate', slot: 'midday', fromDaysAgo: 31, days: 7, value: 2.5 };

/** Numbers that were copied on a day's round. @param today ISO date on which it is shown */
export function copiedAt(
  { site }: Facility,
  today: string,
  date: string,
  slot: string,
): (line: string) => number | null {
  const from = addDays(today, -COPIED.fromDaysAgo);
  const applies = site.key === 'harbour' && slot === COPIED.slot && date >= from && date < addDays(from, COPIED.days);
  return (line) => (applies && line === COPIED.line ? COPIED.value : null);
}

/** Small things seen, by days back, round and line: each is put right before the next round. */
const SMALL: Record<string, { daysAgo: number; slot: string; line: string; note: string }[]> = {
  harbour: [
    {
      daysAgo: 52,
      slot: 'morning',
      line: 'seagrass/system/floor',
      note: 'Wet under the skimmer cup. Dried, cup seated anew.',
    },
    {
      daysAgo: 26,
      slot: 'evening',
      line: 'mangrove/system/floor',
      note: 'A puddle at the mains valve: a drop a minute. Nut tightened.',
    },
    { daysAgo: 12, slot: 'morning', line: 'rockpool/system/floor', note: 'A child was faster than the towel.' },
  ],
  'quay-street': [
    {
      daysAgo: 33,
      slot: 'opening',
      line: 'marine-wall/system/floor',
      note: 'Wet: somebody switched the wall off to clean it.',
    },
  ],
  'mill-lane': [{ daysAgo: 19, slot: 'closing', line: 'koi-vat/system/floor', note: 'Splashed over at feeding.' }],
};

/** What was seen on a round that is not as usual, by line. @param round slot and day */
export function seenAt(facility: Facility, today: string, round: string): (line: string) => Seen {
  const { key, zone } = facility.site;
  const found = new Map<string, Seen>();
  for (const { daysAgo, slot, line, note } of SMALL[key] ?? [])
    if (round === `${slot} ${addDays(today, -daysAgo)}`)
      found.set(line, { value: { kind: 'yes-no', asUsual: false }, note });
  if (key === 'harbour') poolSeen(found, round, wallClock(zone, poolStory(zone, today).pausedMs).date);
  if (key === 'mill-lane') windowSeen(found, round, wallClock(zone, windowStory(zone, today).seenMs).date);
  return (line) => found.get(line) ?? null;
}

/** On the morning after, two rays are dead and one lies on its side. */
function poolSeen(found: Map<string, Seen>, round: string, evening: string): void {
  const next = addDays(evening, 1);
  if (round === `midday ${next}` || round === `evening ${next}`)
    found.set('touch-pool/stock/rays', {
      value: { kind: 'head-count', count: 22 },
      note: 'One was put down before noon.',
    });
  if (round !== `morning ${next}`) return;
  found.set('touch-pool/stock/rays', {
    value: { kind: 'head-count', count: 23 },
    note: 'Two dead in the night. One of the 23 lies on its side and breathes fast: the veterinarian is called.',
  });
}

/** The dial stands where it was put, and the water does not. */
function windowSeen(found: Map<string, Seen>, round: string, sunday: string): void {
  if (round === `sunday-closing ${sunday}`) {
    found.set('window-tank/equipment/heater/usual', {
      value: { kind: 'yes-no', asUsual: false },
      note: 'Hot, and its lamp is on though the dial says 25. Unplugged.',
    });
  }
  if (round !== `opening ${addDays(sunday, 1)}`) return;
  found.set('window-tank/stock/fish', {
    value: { kind: 'head-count', count: 60 },
    note: 'One dwarf cichlid dead at the surface.',
  });
}

/**
 * Rounds of the stories, which were walked whatever else was left out: when each was begun, by slot and day.
 *
 * @param today   ISO date on which it is shown
 */
export function pinnedAt({ site }: Facility, today: string): ReadonlyMap<string, number> {
  const { key, zone } = site;
  if (key === 'harbour') {
    const next = addDays(wallClock(zone, poolStory(zone, today).pausedMs).date, 1);
    return new Map([[`morning ${next}`, instantOf(zone, next, '07:22')]]);
  }
  if (key !== 'mill-lane') return new Map();
  const { seenMs } = windowStory(zone, today);
  const { date } = wallClock(zone, seenMs);
  const next = addDays(date, 1);
  return new Map([
    [`sunday-closing ${date}`, seenMs - 5 * 60_000],
    [`opening ${next}`, instantOf(zone, next, '09:18')],
  ]);
}
