import type { Facility } from '#core/facility/facility';
import { checksOf, type Sheet, sheetOf } from '#core/rounds/sheet';
import { addDays } from '#core/time/add-days';
import { asOf } from './as-of';
import { entriesOf, type PastEntry } from './entries';
import { type HandReader, handReader } from './hand';
import { lossesAt } from './losses';
import type { PastTest } from './ledger';
import type { SystemPast } from './readings-of';
import { idFor } from './seeded-id';
import type { LocalDay } from './span';
import { copiedAt, pinnedAt, seenAt } from './told-rounds';
import { type PastWalk, pastWalks } from './walks';

/** One round that was walked, with its sheet as it was then and what was recorded on it. */
export interface PastRound extends PastWalk {
  id: string;
  sheet: Sheet;
  entries: PastEntry[];
}

/**
 * The rounds that were walked at a site.
 *
 * @param tests   what was tested when: it stands on the round of that day, if one was walked by then
 * @param today   ISO date on which it is shown
 */
export function pastRounds(
  facility: Facility,
  systems: ReadonlyMap<string, SystemPast>,
  {
    days,
    untilMs,
    tests,
    today,
  }: { days: readonly LocalDay[]; untilMs: number; tests: readonly PastTest[]; today: string },
): PastRound[] {
  const { key } = facility.site;
  const losses = lossesAt(facility, today);
  const reader = readersOf(facility, systems, days[0]?.fromMs ?? 0);
  return pastWalks(facility, days, untilMs, pinnedAt(facility, today)).map((past): PastRound => {
    const { slot, date } = past.walk;
    const round = `${slot.key} ${date}`;
    // What was tested on the day was not tested yet when the round was begun.
    const sheet = sheetOf(asOf(facility, addDays(date, -1), losses), slot, date);
    const seen = seenAt(facility, today, round);
    const copied = copiedAt(facility, today, date, slot.key);
    const walking = {
      site: key,
      round,
      person: past.by,
      begunMs: past.begunMs,
      signedMs: past.signedMs,
      reader,
      copied,
      seen,
      tested: (system: string | null, safeguard: string) => testOn(tests, { system, safeguard, date, past }),
    };
    return { ...past, id: idFor(past.begunMs, key, round), sheet, entries: entriesOf(checksOf(sheet), walking) };
  });
}

function testOn(
  tests: readonly PastTest[],
  { system, safeguard, date, past }: { system: string | null; safeguard: string; date: string; past: PastWalk },
): { id: string; result: 'worked' | 'failed' } | null {
  const found = tests.find((one) => one.system === system && one.safeguard === safeguard && one.test.on === date);
  return found && found.atMs <= (past.signedMs ?? 0) ? { id: found.id, result: found.test.result } : null;
}

/** One reader for each sensor, made when it is first read. */
function readersOf(
  facility: Facility,
  systems: ReadonlyMap<string, SystemPast>,
  fromMs: number,
): (system: string, sensor: string) => HandReader | undefined {
  const readers = new Map<string, HandReader | null>();
  return (system, key) => {
    const name = `${system}/${key}`;
    const known = readers.get(name);
    if (known !== undefined) return known ?? undefined;
    const past = systems.get(system);
    const sensor = past?.course.system.sensors.find((one) => one.key === key);
    const made = past && sensor ? handReader(facility.site.key, past.course, past.habits, sensor, fromMs) : null;
    readers.set(name, made);
    return made ?? undefined;
  };
}
