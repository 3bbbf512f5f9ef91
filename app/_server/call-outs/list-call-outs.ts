import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { accountNames } from '#data/accounts/names';
import { type CallOutRow, calledFor, openCallOuts, pastCallOuts } from '#data/call-outs/call-outs';
import { waysOf } from '#data/calls/ways';
import { callOutsPlace } from '#shape/call-outs/requests';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { standingOf } from './standing';

/** Somebody who went in alone. Instants in ISO, UTC. */
export interface CallOutLine {
  id: string;
  name: string;
  place: string;
  state: 'out' | 'overdue' | 'back';
  begunAt: string;
  until: string;
  /** Who may say besides them that they are back. */
  named: string | null;
  /** The alarm they went for. */
  occurrence: string | null;
  /** Names of those who were called for it. */
  called: string[];
  /** Who looks after it. */
  seenTo: string | null;
  backAt: string | null;
  backBy: string | null;
  note: string | null;
  isOwn: boolean;
  mayExtend: boolean;
  mayEnd: boolean;
}

/** Who is in alone at a site. */
export interface CallOutsPage {
  site: { key: string; name: string; zone: string };
  open: CallOutLine[];
  past: CallOutLine[];
  /** Who may be named. */
  people: { account: string; name: string }[];
  mayBegin: boolean;
}

export const listCallOutsShape = callOutsPlace;

/** Past ones that are shown. */
const PAST = 20;

/** Who is in alone at a site, who was, and who may be named by whoever goes now. */
export async function listCallOuts(
  who: Who,
  { site: key }: z.output<typeof listCallOutsShape>,
): Promise<Result<CallOutsPage, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id, name, zone } = found.value;
  const [open, past, members] = await Promise.all([openCallOuts(id), pastCallOuts(id, PAST), waysOf(id)]);
  const all = [...open, ...past];
  const called = await calledFor(
    id,
    all.map((one) => one.id),
  );
  const accounts = all.flatMap(({ accountId, namedId, events }) => [accountId, namedId, ...events.map(({ by }) => by)]);
  const asked = [...accounts, ...[...called.values()].flatMap((some) => [...some])];
  const names = await accountNames([...new Set(asked.flatMap((one) => (one === null ? [] : [one])))]);
  const known = { who, at: now(), called, nameOf: (of: string) => names.get(of) ?? 'somebody' };
  const mayBegin = may(who, 'acknowledge', key) && !open.some(({ accountId }) => accountId === who.id);
  const people = members
    .filter(({ account, role }) => account !== who.id && role !== 'viewer')
    .map((one) => ({ account: one.account, name: one.name ?? 'somebody' }));
  const line = (one: CallOutRow) => lineOf(one, known);
  return ok({ site: { key, name, zone }, open: open.map(line), past: past.map(line), people, mayBegin });
}

interface Known {
  who: Who;
  at: Date;
  called: ReadonlyMap<string, ReadonlySet<string>>;
  nameOf: (account: string) => string;
}

function lineOf(row: CallOutRow, { who, at, called, nameOf }: Known): CallOutLine {
  const { id, accountId, namedId, occurrenceId, place, begunAt, events } = row;
  const { state, untilMs, isSeenTo } = standingOf(row, at);
  const back = events.find(({ kind }) => kind === 'back');
  const seen = isSeenTo ? events.findLast(({ kind }) => kind === 'seen-to') : undefined;
  const whom = called.get(id) ?? new Set<string>();
  const isOwn = accountId === who.id;
  const isNamed = namedId === who.id;
  return {
    ...{ id, place, state, isOwn, name: nameOf(accountId), occurrence: occurrenceId },
    begunAt: begunAt.toISOString(),
    until: new Date(untilMs).toISOString(),
    named: namedId === null ? null : nameOf(namedId),
    called: [...whom].map(nameOf),
    seenTo: seen?.by ? nameOf(seen.by) : null,
    backAt: back?.at.toISOString() ?? null,
    backBy: back?.by ? nameOf(back.by) : null,
    note: back?.note ?? null,
    mayExtend: state !== 'back' && (isOwn || isNamed),
    mayEnd: state !== 'back' && (isOwn || isNamed || whom.has(who.id)),
  };
}
