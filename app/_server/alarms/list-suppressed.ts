import 'server-only';
import { z } from 'zod';
import { isNeverSuppressed, longestH } from '#core/alarms/life/suppression';
import { ok, type Result } from '#core/result';
import { listMembers, type Member } from '#data/accounts/members';
import { accountNames } from '#data/accounts/names';
import { inTransaction } from '#data/transaction';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { definedAlarms } from './defined-alarms';
import { type SuppressedLine, suppressedLines } from './suppressed-lines';

/** An alarm that may be kept from calling. */
export interface SuppressChoice {
  id: string;
  name: string;
  system: string;
  /** Whether it is one that only a lead may keep from calling, and for a short time. */
  isNever: boolean;
  /** Hours it may be shelved, and out of service, at most. */
  shelveH: number;
  outH: number;
}

/** What of a site calls nobody, and what could be made to. */
export interface SuppressedPage {
  site: { key: string; name: string; zone: string };
  suppressed: SuppressedLine[];
  choices: SuppressChoice[];
  /** Who may have an alarm in hand that is out of service. */
  people: { id: string; name: string }[];
  mayShelve: boolean;
  mayTakeOut: boolean;
}

export const listSuppressedShape = z.object({ site: z.string() });

/** The alarms of a site that are shelved, suppressed by design or out of service, and those that could be. */
export async function listSuppressedAlarms(
  who: Who,
  { site: key }: z.output<typeof listSuppressedShape>,
): Promise<Result<SuppressedPage, Refusal>> {
  const found = await siteFor(who, 'see', key);
  if (!found.ok) return found;
  const { id: siteId, name, zone, revision } = found.value;
  const [suppressed, defined, members] = await Promise.all([
    suppressedLines(siteId),
    inTransaction((tx) => definedAlarms(tx, siteId, revision)),
    listMembers(siteId),
  ]);
  const mayTakeOut = may(who, 'alarm-out-of-service', key);
  const choices = [...(defined?.alarms.values() ?? [])].map(({ id, system, definition }): SuppressChoice => {
    const isNever = isNeverSuppressed(system, definition);
    return {
      id,
      name: definition.name,
      system: system.name,
      isNever,
      shelveH: longestH('shelved', definition, isNever),
      outH: longestH('out-of-service', definition, isNever),
    };
  });
  return ok({
    site: { key, name, zone },
    suppressed,
    choices: choices
      .filter(({ isNever }) => mayTakeOut || !isNever)
      .sort((a, b) => `${a.system}\n${a.name}`.localeCompare(`${b.system}\n${b.name}`)),
    people: mayTakeOut ? await peopleOf(who, members) : [],
    mayShelve: may(who, 'shelve-alarm', key),
    mayTakeOut,
  });
}

/** Who may have an alarm in hand: whoever asks first, then the others of the site. */
async function peopleOf(who: Who, members: readonly Member[]): Promise<SuppressedPage['people']> {
  const own = (await accountNames([who.id])).get(who.id);
  const others = members.filter(
    ({ accountId, endedAt, isEnded }) => accountId !== who.id && endedAt === null && !isEnded,
  );
  return [
    ...(own === undefined ? [] : [{ id: who.id, name: own }]),
    ...others.map((one) => ({ id: one.accountId, name: one.name ?? one.email ?? one.accountId })),
  ];
}
