import 'server-only';
import type { Entry } from '#core/rounds/entry';
import type { ItemAnswer } from '#core/rounds/outbox';
import { readLine } from '#core/rounds/read/line';
import { checksOf } from '#core/rounds/sheet';
import { ok, type Result } from '#core/result';
import { findRound } from '#data/rounds/round-row';
import type { SiteEntry } from '#data/sites';
import { SITE_ITSELF } from '#shape/safeguards/requests';
import type { EnterRequest } from '#shape/rounds/requests';
import { type SentEntry, typedOn } from '#shape/rounds/sync';
import { faultWords, refusalWords } from '../../gate/refusal-words';
import type { Refusal } from '../../gate/refusal';
import { faultOf } from '../../gate/use-case';
import type { Who } from '../../gate/who';
import { dayIn } from '../../local-day';
import { changeSafeguard } from '../../safeguards/change-safeguard';
import { keepTest } from '../../safeguards/keep-test';
import { changeRound, hold } from '../change-round';
import { BESIDE_WORDS, keepLate, type LateEntry } from './keep-late';

/** When something was made and what is known of the clock it was made by. */
export interface MadeAt {
  at: Date;
  clockOffS: number | null;
}

/**
 * Takes in one entry that was made out of reach. Nothing is asked any more: whoever stood there was asked.
 *
 * @param round   id of the round it belongs to
 */
export async function syncEntry(
  who: Who,
  site: SiteEntry,
  round: string,
  item: SentEntry,
  made: MadeAt,
): Promise<ItemAnswer> {
  const refused = (said: string): ItemAnswer => ({ id: item.id, outcome: 'refused', said });
  const typed = typedOn(item, site.key);
  if (!typed.success) return refused(typed.error.issues.map((issue) => faultWords(faultOf(issue))).join(' '));
  const kept = await findRound(site.id, round);
  const own = kept && checksOf(kept.sheet).find(({ key, kind }) => key === item.line.key && kind === item.line.kind);
  const check = own ?? item.line;
  const read = readLine(check, typed.data, null);
  if (!read.ok) return refused(read.reason.map(faultWords).join(' '));
  const entry = entryOf(who, typed.data, read.value.value, made.at);
  const late: LateEntry = { entry, check, isForeign: !own, clockOffS: made.clockOffS };
  const answer: ItemAnswer = { id: item.id, outcome: 'stored' };
  const done =
    entry.value?.kind === 'test' && own
      ? await keepTested({ who, site, round, typed: typed.data, late, answer })
      : await keepPlain({ who, site, round, typed: typed.data, late, answer });
  if (done.ok) return answer;
  // A safeguard that is gone has no ledger any more; what was seen still stands on the sheet.
  const isGone = done.reason.why === 'not-found' && done.reason.what === 'safeguard';
  const again = isGone ? await keepPlain({ who, site, round, typed: typed.data, late, answer }) : done;
  return again.ok ? answer : refused(refusalWords(again.reason));
}

function entryOf(who: Who, typed: EnterRequest, value: Entry['value'], at: Date): Entry {
  const { entry: id, check, notDone = null, note = null, supersedes = null, reason = null } = typed;
  return { id, check, atMs: at.getTime(), by: who.id, value, notDone, note, supersedes, reason };
}

interface Keeping {
  who: Who;
  site: SiteEntry;
  round: string;
  typed: EnterRequest;
  late: LateEntry;
  /** Gains what became of it. */
  answer: ItemAnswer;
}

async function keepPlain({ who, site, round, late, answer }: Keeping): Promise<Result<unknown, Refusal>> {
  return await changeRound(who, 'walk', { site: site.key, round }, async (held) => {
    const { taken, records } = await keepLate(held, who, late);
    tell(answer, taken);
    return ok(records);
  });
}

/** A test goes into the ledger of its safeguard as well, on the day it was done. */
async function keepTested({ who, site, round, typed, late, answer }: Keeping): Promise<Result<unknown, Refusal>> {
  const { about } = late.check;
  const place = { site: site.key, system: about.system ?? SITE_ITSELF, safeguard: about.key };
  return await changeSafeguard(who, 'test-safeguard', place, async (safeguard) => {
    const held = await hold(safeguard.tx, site, round, safeguard.at);
    if (!held) return { ok: false, reason: { why: 'not-found', what: 'round' } };
    const { taken, records } = await keepLate(held, who, late);
    tell(answer, taken);
    if (taken.outcome === 'repeat' || taken.outcome === 'refused') return ok([]);
    const { entry, steps = '', expected = '', found: seen = '' } = typed;
    const result = taken.entry.value?.kind === 'test' ? taken.entry.value.result : 'failed';
    const on = dayIn(site.zone, new Date(taken.entry.atMs));
    const test = { entry, on, result, steps, expected, seen, looked: who.name };
    return ok([...(await keepTest(safeguard, who, test)), ...records]);
  });
}

function tell(answer: ItemAnswer, taken: Awaited<ReturnType<typeof keepLate>>['taken']): void {
  answer.outcome = taken.outcome;
  if (taken.outcome === 'conflict') answer.said = BESIDE_WORDS[taken.beside];
  if (taken.outcome === 'refused') answer.said = 'Its id belongs to another entry.';
}
