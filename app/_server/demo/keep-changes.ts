import 'server-only';
import type { Person } from '#core/rota/rota';
import { shiftTurns } from '#core/rota/shift-turns';
import { addDays } from '#core/time/add-days';
import { instantOf } from '#core/time/zone';
import { addChange, addChangeEvent } from '#data/rota/changes';
import { idFor } from '../../../seed/past/seeded-id';
import { type Telling, tell } from './told';

/** Days ahead for which the demonstration looks for a turn to swap. */
const AHEAD = 7;

/** Keeps a swap that is agreed and approved, and a leave that waits for an answer, where there are people enough. */
export async function keepChanges(telling: Telling): Promise<void> {
  const { people } = telling.past.facility;
  const approver = people.find(({ role }) => role === 'manager');
  const [first, second, third] = people.filter(({ role }) => role === 'aquarist');
  if (!(approver && first && second && third)) return;
  await keepLeave(telling, second);
  await keepSwap(telling, { gives: third, takes: first, approver });
}

/** Two days of leave in a fortnight, asked for yesterday. */
async function keepLeave(telling: Telling, who: Person): Promise<void> {
  const { tx, siteId, past, idOf, accountOf } = telling;
  const { zone, key } = past.facility.site;
  const at = (days: number, time: string) => new Date(instantOf(zone, addDays(past.today, days), time));
  const asked = at(-1, '09:40');
  const id = idFor(asked.getTime(), key, 'leave');
  const [personId, by] = [idOf('person', null, who.key), accountOf(who.key)];
  const [fromAt, toAt] = [at(8, '00:00'), at(10, '00:00')];
  await addChange(tx, siteId, { id, kind: 'leave', personId, fromAt, toAt, why: null, askedBy: by, askedAt: asked });
  const body = { by, change: id, person: personId, from: fromAt.toISOString(), to: toAt.toISOString() };
  tell(telling, asked.getTime(), 'leave-asked', body);
}

interface Swapping {
  gives: Person;
  takes: Person;
  approver: Person;
}

/** The next turn of one that the other has not, taken over since the day before yesterday. */
async function keepSwap(telling: Telling, { gives, takes, approver }: Swapping): Promise<void> {
  const { tx, siteId, past, idOf, accountOf } = telling;
  const { site, shifts } = past.facility;
  const own = shifts.filter(({ people }) => people.includes(gives.key) && !people.includes(takes.key));
  const [turn] = shiftTurns(own, site.zone, addDays(past.today, 2), addDays(past.today, AHEAD));
  if (!turn) return;
  const at = (time: string) => new Date(instantOf(site.zone, addDays(past.today, -2), time));
  const asked = at('12:10');
  const id = idFor(asked.getTime(), site.key, 'swap');
  const [personId, takesId] = [idOf('person', null, gives.key), idOf('person', null, takes.key)];
  const given = { takesId, shiftId: idOf('shift', null, turn.shift), shiftDate: turn.date };
  const change = { id, kind: 'swap', personId, ...given, backShiftId: null, backDate: null, why: null } as const;
  const by = accountOf(gives.key);
  await addChange(tx, siteId, { ...change, askedBy: by, askedAt: asked });
  const parties = { person: personId, takes: takesId, shift: given.shiftId, date: turn.date };
  tell(telling, asked.getTime(), 'swap-asked', { by, change: id, ...parties });
  const answers = [
    { kind: 'agreed', who: takes, when: at('13:05') },
    { kind: 'approved', who: approver, when: at('16:20') },
  ] as const;
  for (const [place, { kind, who, when }] of answers.entries()) {
    const answerer = accountOf(who.key);
    const event = { changeId: id, number: place + 1, kind, by: answerer, at: when, why: null };
    await addChangeEvent(tx, siteId, event);
    const body = { by: answerer, change: id, of: 'swap', person: personId };
    tell(telling, when.getTime(), `duty-change-${kind}`, body);
  }
}
