import 'server-only';

/** Days, and weeks, of which the last backup is kept. */
const DAYS = 14;
const WEEKS = 8;
const DAY_MS = 86_400_000;
/** ms from the epoch, a Thursday, to the Monday before it. */
const TO_MONDAY_MS = 3 * DAY_MS;

const NAME = /^holdfast-(\d{4})-(\d{2})-(\d{2})T(\d{2})(\d{2})(\d{2})Z\.backup$/;

/** Name of the file of a daily backup, such as `holdfast-2026-11-25T020000Z.backup`. @param at the instant of the snapshot */
export function backupName(at: Date): string {
  return `holdfast-${at.toISOString().slice(0, 19).replaceAll(':', '')}Z.backup`;
}

/** The instant a daily backup is named after. @returns null for a file that is none */
export function instantOf(name: string): Date | null {
  const [, year, month, day, hour, minute, second] = NAME.exec(name) ?? [];
  return year === undefined ? null : new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
}

/**
 * Which daily backups have had their time. The last of each of the latest fourteen days that have one is kept, and of each of
 * the latest eight weeks, from Monday, in UTC; so the newest always is. What is not named like a daily backup is left alone.
 *
 * @param names   of the files in the folder
 * @returns       names of those to remove
 */
export function outOfTime(names: readonly string[]): string[] {
  const backups = names
    .flatMap((name) => {
      const at = instantOf(name);
      return at === null || Number.isNaN(at.getTime()) ? [] : [{ name, ms: at.getTime() }];
    })
    .sort((a, b) => b.ms - a.ms);
  const kept = new Set([
    ...lastOfEach(backups, DAYS, (ms) => Math.floor(ms / DAY_MS)),
    ...lastOfEach(backups, WEEKS, (ms) => Math.floor((ms + TO_MONDAY_MS) / (7 * DAY_MS))),
  ]);
  return backups.map(({ name }) => name).filter((name) => !kept.has(name));
}

/** @param backups the newest first */
function lastOfEach(backups: { name: string; ms: number }[], count: number, spanOf: (ms: number) => number): string[] {
  const bySpan = new Map<number, string>();
  for (const { name, ms } of backups) if (!bySpan.has(spanOf(ms))) bySpan.set(spanOf(ms), name);
  return [...bySpan.values()].slice(0, count);
}
