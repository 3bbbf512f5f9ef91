import 'server-only';
import { nextOn, type OnDuty, onNow } from '#core/rota/on-now';
import type { Rota } from '#core/rota/turns';

/** Somebody who is on, by name; instants in ms, null where no end comes within eight days. */
export interface OnPerson {
  name: string;
  kind: OnDuty['kind'];
  until: number | null;
}

/** Who is on at a site now, and who comes next. */
export interface OnNow {
  on: OnPerson[];
  next: (OnPerson & { from: number })[];
}

/** Who is on at a moment and who comes next, by name. @param at ms */
export function whoIsOn(rota: Rota, at: number): OnNow {
  const names = new Map(rota.people.map(({ key, name }) => [key, name]));
  const told = ({ person, kind, until }: OnDuty): OnPerson => ({ name: names.get(person) ?? person, kind, until });
  return {
    on: onNow(rota, at).map(told),
    next: nextOn(rota, at).map((one) => ({ ...told(one), from: one.from })),
  };
}
