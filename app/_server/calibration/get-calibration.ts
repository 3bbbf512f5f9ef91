import 'server-only';
import type { z } from 'zod';
import { CALIBRATIONS, type FittedStretch } from '#core/calibration/found';
import type { ClockS } from '#core/calibration/lump';
import type { System } from '#core/facility/system';
import { ok, type Result, refused } from '#core/result';
import { wallClock } from '#core/time/zone';
import { calibrationPlace } from '#shape/calibration/calibration-place';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { timeIn } from '../local-day';
import { findStoredSite, type SiteToday } from '../reviews/find-stored-site';
import { recordedOf } from './recorded';
import { type WorkedOut, workOut } from './work-out';

export const getCalibrationShape = calibrationPlace;

/** A stretch with when it was, on the site's clock. */
export interface ShownStretch extends FittedStretch {
  fromThere: string;
  toThere: string;
}

/** What the readings of a system say of the figures of its description. */
export interface CalibrationPage {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  days: number;
  /** ms since 1970: the end of the readings looked at. */
  untilMs: number;
  /** The first and the last day, on the site's calendar. */
  first: string;
  last: string;
  /** Keys of the stretches that are left out. */
  out: string[];
  fits: (Omit<WorkedOut, 'stretches'> & { stretches: ShownStretch[] })[];
  /** Whether the person may take a figure over. */
  mayDescribe: boolean;
}

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** What the readings of some days say of heat loss, evaporation, gas exchange and use of oxygen. */
export async function getCalibration(
  who: Who,
  { site, system, days, out }: z.output<typeof getCalibrationShape>,
): Promise<Result<CalibrationPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const home = stored.facility.systems.find(({ key }) => key === system);
  if (!home) return refused({ why: 'not-found', what: 'system' });
  // Whole minutes, so that what is taken over can be worked out from the very same readings.
  const untilMs = Math.floor(now().getTime() / MINUTE_MS) * MINUTE_MS;
  const working = await workingOf(found.value, home, { untilMs, days, out });
  const fits = [];
  for (const is of CALIBRATIONS) fits.push(await workOut(is, working));
  const there = (atMs: number) => timeIn(entry.zone, new Date(atMs)).slice(0, 16);
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    system: { key: home.key, name: home.name },
    days,
    untilMs,
    first: there(untilMs - days * DAY_MS).slice(0, 10),
    last: there(untilMs).slice(0, 10),
    out,
    fits: fits.map(({ stretches, ...fit }) => ({
      ...fit,
      stretches: stretches.map((one) => ({ ...one, fromThere: there(one.fromMs), toThere: there(one.toMs) })),
    })),
    mayDescribe: may(who, 'describe', site),
  });
}

/** Everything that figures of a system are worked out from. */
export async function workingOf(
  { entry, stored }: SiteToday,
  system: System,
  { untilMs, days, out }: { untilMs: number; days: number; out: readonly string[] },
) {
  const span = { from: new Date(untilMs - days * DAY_MS), to: new Date(untilMs) };
  return {
    facility: stored.facility,
    system,
    recorded: await recordedOf(entry.id, system, span),
    clockS: clockOf(entry.zone),
    leftOut: new Set(out),
  };
}

const HOUR_MS = 3_600_000;

/** The clock of a place, looked up once an hour: its offset from UTC does not change within one. */
function clockOf(zone: string): ClockS {
  const midnights = new Map<number, number>();
  return (atMs) => {
    const hour = Math.floor(atMs / HOUR_MS);
    const known = midnights.get(hour);
    const into = known ?? secondsAt(zone, hour * HOUR_MS);
    if (known === undefined) midnights.set(hour, into);
    return (into + (atMs - hour * HOUR_MS) / 1000) % 86_400;
  };
}

function secondsAt(zone: string, atMs: number): number {
  const [hours = 0, minutes = 0] = wallClock(zone, atMs).time.split(':').map(Number);
  return hours * 3600 + minutes * 60;
}
