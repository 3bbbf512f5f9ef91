import 'server-only';
import type { Facility } from '#core/facility/facility';
import { nextOn, type OnDuty, onNow } from '#core/rota/on-now';

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
export function whoIsOn(facility: Facility, at: number): OnNow {
  const names = new Map(facility.people.map(({ key, name }) => [key, name]));
  const told = ({ person, kind, until }: OnDuty): OnPerson => ({ name: names.get(person) ?? person, kind, until });
  return {
    on: onNow(facility, at).map(told),
    next: nextOn(facility, at).map((one) => ({ ...told(one), from: one.from })),
  };
}
