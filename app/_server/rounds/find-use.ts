import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Check } from '#core/rounds/check';
import type { Entry } from '#core/rounds/entry';
import { type NotedValue, RATES_BACK, type UsedRate, usedRate } from '#core/rounds/rate';
import { type UsedLine, usedLines } from '#core/rounds/used-lines';
import { listBefore } from '#data/rounds/entries';
import type { SiteEntry } from '#data/sites';
import type { EnterRequest } from '#shape/rounds/requests';
import { now } from '../clock';

/**
 * What was noted before on a line of what is used, the latest first; null for a line of another kind, which asks nothing.
 *
 * @param entries   what stands on the round: a correction is of what was looked at then
 */
export async function notedBefore(
  siteId: string,
  check: Check,
  { supersedes }: Pick<EnterRequest, 'supersedes'>,
  entries: () => Promise<Entry[]>,
): Promise<{ before: NotedValue[]; atMs: number } | null> {
  if (!isUse(check)) return null;
  const corrected = supersedes === undefined ? undefined : (await entries()).find(({ id }) => id === supersedes);
  const at = corrected ? new Date(corrected.atMs) : now();
  const found = await listBefore(siteId, at, [check.key], RATES_BACK);
  return { before: notedOf(found.get(check.key)), atMs: at.getTime() };
}

/**
 * What is used a day at a site, line by line; of those of one system where it is named.
 *
 * @param day   ISO date at the site
 */
export async function findUse(
  siteId: string,
  facility: Facility,
  day: string,
  system?: string,
): Promise<{ line: UsedLine; rate: UsedRate | null }[]> {
  const lines = usedLines(facility, day).filter(({ about }) => system === undefined || about.system === system);
  if (lines.length === 0) return [];
  const found = await ratesOnAll(siteId, [{ checks: lines }]);
  const rates = found(lines, new Map());
  return lines.map((line) => ({ line, rate: rates.get(line.key) ?? null }));
}

/** What is used a day on the lines of a round that note it, by their key, with what stands on the round. */
export async function ratesOn(
  { id }: Pick<SiteEntry, 'id'>,
  checks: readonly Check[],
  standing: ReadonlyMap<string, Stands>,
): Promise<Map<string, UsedRate | null>> {
  return (await ratesOnAll(id, [{ checks }]))(checks, standing);
}

/**
 * The same for many rounds of the past days: one question for all of them, and none where no line notes what is used.
 *
 * @returns   tells of one of them, by its lines and what stands on them
 */
export async function ratesOnAll(
  siteId: string,
  rounds: readonly { checks: readonly Check[] }[],
): Promise<(checks: readonly Check[], standing: ReadonlyMap<string, Stands>) => Map<string, UsedRate | null>> {
  const keys = [...new Set(rounds.flatMap(({ checks }) => checks.filter(isUse).map(({ key }) => key)))];
  const found = keys.length === 0 ? null : await listBefore(siteId, now(), keys, RATES_BACK * 2);
  return (checks, standing) =>
    new Map(
      checks.filter(isUse).map((check) => {
        const own = standing.get(check.key);
        const noted = notedOf(found?.get(check.key));
        if (!own?.value) return [check.key, usedRate(check, noted)];
        const before = noted.filter(({ atMs }) => atMs < own.atMs);
        return [check.key, usedRate(check, [{ value: own.value, atMs: own.atMs }, ...before])];
      }),
    );
}

type Stands = Pick<Entry, 'value' | 'atMs'>;

function isUse({ kind }: Check): boolean {
  return kind === 'used' || kind === 'doses';
}

function notedOf(before: readonly { value: NotedValue['value']; at: Date }[] = []): NotedValue[] {
  return before.map(({ value, at }) => ({ value, atMs: at.getTime() }));
}
