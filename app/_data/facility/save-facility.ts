import 'server-only';
import { z } from 'zod';
import type { Facility } from '#core/facility/facility';
import { facilityShape } from '#shape/facility/facility';
import type { Author } from '../plans/add';
import { addSheetVersions } from '../rounds/sheet-versions';
import type { Transaction } from '../transaction';
import { type Identity, identify, NO_ORDERS, type Orders } from './identity';
import { type Member, membersOf } from './members';
import { nameIdsOf } from './names';
import { TABLES, type Table } from './nouns';
import { bringIntoForce, type PlanInForce } from './plans';
import { rowOf, type Written, writeRows } from './rows';
import { addToLedger, changeLedger, findCountedTests, type LedgerRow } from './safeguard-tests';
import { replaceShiftPeople } from './shift-people';
import { saveSite } from './site-row';

/** What saving a facility did. */
export interface Saved {
  /** Whether anything at all is other than before. */
  isChanged: boolean;
  /** Tables whose rows were touched, with the ids. */
  written: Partial<Record<Table, Written>>;
  plans: PlanInForce[];
  tests: LedgerRow[];
  /** Ids of everything in the facility. */
  idOf: Identity['idOf'];
}

/**
 * Makes what is stored of a site be this facility. Things keep their ids as long as their key stays; what the facility no
 * longer has is retired, and its history with it; nothing is deleted.
 *
 * @param siteId     the site, whose row the transaction holds, so that two of these run one after the other
 * @param facility   a valid facility
 * @param author     who makes it so, and why: stands beside the plans that come into force and the tests
 * @param at         the instant
 * @param orders     what keys alone do not say: what was replaced, and what was moved
 * @throws           ZodError when the facility is not valid, which is a break of the caller
 */
export async function saveFacility(
  tx: Transaction,
  siteId: string,
  facility: Facility,
  author: Author,
  at: Date,
  orders: Orders = NO_ORDERS,
): Promise<Saved> {
  const form = z.encode(facilityShape, facility);
  const given = membersOf(form);
  const identity = await identify(tx, siteId, given, orders);
  const nameIds = await nameIdsOf(tx, siteId, given);
  const { members, rows: ledger } = await withLedgers(tx, siteId, given, identity, nameIds);
  const written: Saved['written'] = {};
  for (const table of TABLES) {
    const rows = members
      .filter((member) => member.table === table)
      .map((member) => rowOf(siteId, member, identity, nameIds));
    const result = await writeRows(tx, { siteId, table, rows, minted: identity.minted, at });
    if (Object.values(result).some((ids) => ids.length > 0)) written[table] = result;
  }
  const { added = [], changed = [] } = written.round_sheet ?? {};
  await addSheetVersions(tx, siteId, [...added, ...changed], author, at);
  await addToLedger(tx, siteId, ledger, at, author.by);
  const plans = await bringIntoForce(tx, siteId, plansOf(members, identity), author, at);
  const areDutiesNew = await replaceShiftPeople(tx, siteId, dutiesOf(members, identity));
  const isSiteNew = await saveSite(tx, siteId, form.site);
  const isChanged =
    isSiteNew || areDutiesNew || plans.length > 0 || ledger.length > 0 || Object.keys(written).length > 0;
  return { isChanged, written, plans, tests: ledger, idOf: identity.idOf };
}

/** Works out what the ledgers must gain, and has each safeguard say which of its tests count. */
async function withLedgers(
  tx: Transaction,
  siteId: string,
  members: readonly Member[],
  identity: Identity,
  nameIds: ReadonlyMap<string, string>,
): Promise<{ members: Member[]; rows: LedgerRow[] }> {
  const counted = await findCountedTests(tx, siteId);
  const rows: LedgerRow[] = [];
  const told = members.map((member) => {
    if (!member.tests) return member;
    const id = identity.idOf(member.table, member.system, member.key);
    const change = changeLedger(id, counted.get(id) ?? [], member.tests, nameIds);
    rows.push(...change.rows);
    return { ...member, fields: { ...member.fields, tests: change.tests } };
  });
  return { members: told, rows };
}

function plansOf(members: readonly Member[], { idOf }: Identity): Map<string, Record<string, unknown>> {
  return new Map(members.flatMap(({ table, system, key, plan }) => (plan ? [[idOf(table, system, key), plan]] : [])));
}

function dutiesOf(members: readonly Member[], { idOf }: Identity) {
  return members.flatMap(({ table, key, people = [] }) =>
    people.map((person, ordinal) => ({
      shiftId: idOf(table, null, key),
      ordinal,
      personId: idOf('person', null, person),
    })),
  );
}
