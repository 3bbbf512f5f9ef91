import 'server-only';
import { type ChangeEffect, effectOf } from '#core/rota/change';
import type { Competence, DutyException } from '#core/rota/rota';
import { gapsBetween } from '#core/rota/nobody';
import { type Rota, type Turn, turnsOf } from '#core/rota/turns';
import { addDays } from '#core/time/add-days';
import { dayStart } from '#core/time/zone';
import type { KeptChange } from '#data/rota/changes';

/** What a change comes to, once it is approved; nothing where what it names is described no more. */
function exceptionsOf({ kind, person, from, to, takes, turn, back }: KeptChange): DutyException[] {
  const gives = person.key;
  if (gives === null) return [];
  if (kind === 'leave') return from && to ? [{ kind, person: gives, from: from.getTime(), to: to.getTime() }] : [];
  const taker = takes?.key ?? null;
  if (taker === null) return [];
  const swap = (one: KeptChange['turn'], who: string, whom: string): DutyException[] =>
    one === null || one.shift.key === null
      ? []
      : [{ kind, shift: one.shift.key, date: one.date, gives: who, takes: whom }];
  const part = from && to ? { from: from.getTime(), to: to.getTime() } : {};
  return [...swap(turn, gives, taker).map((one) => ({ ...one, ...part })), ...swap(back, taker, gives)];
}

/** The stretch a change touches, ms: the leave, the part of a turn, or the days of its turns. */
export function stretchOf({ from, to, turn, back }: KeptChange, zone: string): { from: number; to: number } {
  if (from && to && back === null) return { from: from.getTime(), to: to.getTime() };
  const days = [turn, back].flatMap((one) => (one ? [one.date] : [])).sort();
  const [first = '', last = first] = [days.at(0), days.at(-1)];
  return { from: dayStart(zone, first), to: dayStart(zone, addDays(last, 2)) };
}

/** What a change would do to the rota that has all approved ones. */
export function effectOfChange(rota: Rota, change: KeptChange, competences: readonly Competence[] = []): ChangeEffect {
  const { from, to } = stretchOf(change, rota.site.zone);
  return effectOf(rota, exceptionsOf(change), competences, from, to);
}

/** Whether whoever gives a turn of a change still has it, and so for one in return. */
export function stillStands(rota: Rota, change: KeptChange): boolean {
  return exceptionsOf(change).every((one) => one.kind === 'leave' || hasTurn(rota, one.gives, one));
}

/** A turn of a shift, or the part of it from one moment to another, ms. */
interface Given {
  shift: string;
  date: string;
  from?: number;
  to?: number;
}

/** Whether somebody has a turn of a shift that begins on a day, or all of a part of it, after all that was approved. */
export function hasTurn(rota: Rota, person: string, given: Given): boolean {
  const own = heldOf(rota, person, given);
  const { from, to } = given;
  if (from === undefined || to === undefined) return own.length > 0;
  return gapsBetween(own, from, to).length === 0;
}

/** Whether somebody is in any of a turn, or of a part of it. */
export function isInTurn(rota: Rota, person: string, given: Given): boolean {
  const { from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = given;
  return heldOf(rota, person, given).some(({ start, end }) => start < to && end > from);
}

function heldOf(rota: Rota, person: string, { shift, date }: Given): Turn[] {
  const from = dayStart(rota.site.zone, date);
  return turnsOf(rota, from, from + 2 * 86_400_000).filter(
    (turn) => turn.person === person && turn.shift === shift && turn.date === date,
  );
}

/** Minutes in spans. */
export function minutesIn(spans: readonly { from: number; to: number }[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0) / 60_000;
}
