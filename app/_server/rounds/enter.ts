import 'server-only';
import type { Check } from '#core/rounds/check';
import { readLine } from '#core/rounds/read/line';
import { checksOf } from '#core/rounds/sheet';
import { ok, type Result, refused } from '#core/result';
import { latestOf } from '#data/readings/series';
import { listBefore, listEntries } from '#data/rounds/entries';
import { findRound, type KeptRound } from '#data/rounds/round-row';
import type { SiteEntry } from '#data/sites';
import { type EnterRequest, enterRequest, type RoundAddress } from '#shape/rounds/requests';
import type { Refusal } from '../gate/refusal';
import { notedBefore } from './find-use';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { changeRound } from './change-round';
import { enterTest } from './enter-test';
import { keepEntry } from './keep-entry';

export const enterShape = enterRequest;

/** What comes of an entry: it is kept, or something is asked first and nothing is kept yet. */
export interface Entered extends RoundAddress {
  asked: string | null;
}

/**
 * Records what was seen on one line of a sheet, or why it was not looked at. A number is a reading of its sensor at once. What
 * cannot well be, and what lies outside the limits of an alarm, is asked about and not refused.
 */
export async function enter(who: Who, typed: EnterRequest): Promise<Result<Entered, Refusal>> {
  const found = await siteFor(who, 'walk', typed.site);
  if (!found.ok) return found;
  const site = found.value;
  const round = await findRound(site.id, typed.round);
  if (!round) return refused({ why: 'not-found', what: 'round' });
  const check = checksOf(round.sheet).find(({ key }) => key === typed.check);
  if (!check) return refused({ why: 'not-found', what: 'line of the sheet' });
  const read = readLine(
    check,
    typed,
    await lastNumber(site, round, check),
    await notedBefore(site.id, check, typed, () => listEntries(site.id, round.id)),
  );
  if (!read.ok) return refused({ why: 'invalid', faults: read.reason });
  const { value, question } = read.value;
  if (question !== null && typed.sure === undefined) return ok({ site: site.key, round: round.id, asked: question });
  const kept =
    value?.kind === 'test'
      ? await enterTest(who, typed, check, value)
      : await changeRound(who, 'walk', typed, (held) => keepEntry(held, who, { typed, check, value }));
  return kept.ok ? ok({ ...kept.value, asked: null }) : kept;
}

/** The newest number known of what a line reads: of its sensor, or of the rounds before. */
async function lastNumber(site: SiteEntry, round: KeptRound, check: Check): Promise<number | null> {
  if (check.kind !== 'number') return null;
  const sensor = round.sheet.sensors[`${check.about.system}/${check.about.key}`];
  const latest = sensor === undefined ? undefined : (await latestOf(site.id)).get(sensor);
  if (latest?.goodValue !== undefined) return latest.goodValue;
  const [before] = (await listBefore(site.id, round.begunAt, [check.key], 1)).get(check.key) ?? [];
  return before?.value.kind === 'number' ? before.value.value : null;
}
