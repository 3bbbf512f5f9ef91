import 'server-only';
import type { ChangeEvent } from '#core/rota/change';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A thing of the rota: its id, and its key while it is described. */
interface Known {
  id: string;
  key: string | null;
}

/** A turn of a shift. */
export interface KeptTurn {
  shift: Known;
  /** ISO date on which it begins at the site. */
  date: string;
}

/** Leave or a swap as it was asked for, and what came of it. */
export interface KeptChange {
  id: string;
  kind: 'leave' | 'swap';
  /** Whose leave it is; who gives the turn. */
  person: Known;
  /** Of leave its two ends; of a swap those of the part that is given, where it is not the whole turn. */
  from: Date | null;
  to: Date | null;
  takes: Known | null;
  turn: KeptTurn | null;
  /** A turn given in return. */
  back: KeptTurn | null;
  why: string | null;
  askedBy: string;
  askedAt: Date;
  /** In their order. */
  events: { kind: ChangeEvent; by: string; at: Date; why: string | null }[];
}

/** What is asked for: a leave has its two ends, a swap who takes which turn. */
export type NewChange = { id: string; personId: string; why: string | null; askedBy: string; askedAt: Date } & (
  | { kind: 'leave'; fromAt: Date; toAt: Date }
  | {
      kind: 'swap';
      /** Ends of the part that is given; left out: the whole turn. */
      fromAt?: Date;
      toAt?: Date;
      takesId: string;
      shiftId: string;
      shiftDate: string;
      backShiftId: string | null;
      backDate: string | null;
    }
);

/** Adds what is asked for. @returns whether it is new: what is sent twice is added once */
export async function addChange(tx: Transaction, siteId: string, change: NewChange): Promise<boolean> {
  const { count } = await tx.rotaChange.createMany({ data: [{ siteId, ...change }], skipDuplicates: true });
  return count > 0;
}

/** Adds what came of a change, as its event of this number, from 1. @returns whether nobody was quicker */
export async function addChangeEvent(
  tx: Transaction,
  siteId: string,
  event: { changeId: string; number: number; kind: ChangeEvent; by: string; at: Date; why: string | null },
): Promise<boolean> {
  const { count } = await tx.rotaChangeEvent.createMany({ data: [{ siteId, ...event }], skipDuplicates: true });
  return count > 0;
}

/** A change by its id; null when there is none. */
export async function findChange(tx: Transaction, siteId: string, id: string): Promise<KeptChange | null> {
  const [found] = await select(tx, siteId, Prisma.sql`c.id = ${id}::uuid`);
  return found ?? null;
}

/**
 * The changes of a site that are of any moment: those that touch what comes after an instant, and those that were asked for
 * after it. The newest first.
 */
export async function listChanges(siteId: string, since: Date): Promise<KeptChange[]> {
  const day = since.toISOString().slice(0, 10);
  return await select(
    database(),
    siteId,
    Prisma.sql`(c.asked_at >= ${since} OR c.to_at >= ${since} OR greatest(c.shift_date, c.back_date) >= ${day})`,
  );
}

type Row = Omit<KeptChange, 'events' | 'turn' | 'back' | 'takes'> & {
  takes: Known;
  shift: Known;
  date: string | null;
  backShift: Known;
  backDate: string | null;
  events: { kind: ChangeEvent; by: string; at: string; why: string | null }[];
};

async function select(asker: Pick<Transaction, '$queryRaw'>, siteId: string, where: Prisma.Sql): Promise<KeptChange[]> {
  const known = (table: Prisma.Sql, id: Prisma.Sql) => Prisma.sql`jsonb_build_object('id', ${id}, 'key',
    (SELECT t.key FROM ${table} t WHERE t.site_id = c.site_id AND t.id = ${id} AND t.retired_at IS NULL))`;
  const rows = await asker.$queryRaw<Row[]>`
    SELECT c.id, c.kind, ${known(Prisma.sql`person`, Prisma.sql`c.person_id`)} AS person, c.from_at AS "from",
           c.to_at AS "to", ${known(Prisma.sql`person`, Prisma.sql`c.takes_id`)} AS takes,
           ${known(Prisma.sql`shift`, Prisma.sql`c.shift_id`)} AS shift, c.shift_date AS date,
           ${known(Prisma.sql`shift`, Prisma.sql`c.back_shift_id`)} AS "backShift", c.back_date AS "backDate", c.why,
           c.asked_by AS "askedBy", c.asked_at AS "askedAt",
           (SELECT coalesce(jsonb_agg(jsonb_build_object('kind', e.kind, 'by', e.by, 'at', e.at, 'why', e.why) ORDER BY e.number), '[]')
              FROM rota_change_event e WHERE e.site_id = c.site_id AND e.change_id = c.id) AS events
      FROM rota_change c WHERE c.site_id = ${siteId}::uuid AND ${where} ORDER BY c.asked_at DESC, c.id DESC`;
  return rows.map(({ takes, shift, date, backShift, backDate, events, ...row }) => ({
    ...row,
    takes: row.kind === 'swap' ? takes : null,
    turn: date === null ? null : { shift, date },
    back: backDate === null ? null : { shift: backShift, date: backDate },
    events: events.map((event) => ({ ...event, at: new Date(event.at) })),
  }));
}

/** How often anything has come of a leave or a swap at a site. */
export async function countDecided(siteId: string): Promise<number> {
  return await database().rotaChangeEvent.count({ where: { siteId } });
}

/** Ids of the people and shifts that are described at a site, by key. */
export async function findRotaIds(
  tx: Transaction,
  siteId: string,
): Promise<{ people: ReadonlyMap<string, string>; shifts: ReadonlyMap<string, string> }> {
  const living = { where: { siteId, retiredAt: null }, select: { id: true, key: true } };
  const [people, shifts] = [await tx.person.findMany(living), await tx.shift.findMany(living)];
  const byKey = (rows: { id: string; key: string }[]) => new Map(rows.map(({ id, key }) => [key, id]));
  return { people: byKey(people), shifts: byKey(shifts) };
}
