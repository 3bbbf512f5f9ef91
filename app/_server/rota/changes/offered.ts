import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type Rota, turnsOf } from '#core/rota/turns';
import type { Answerer } from './who-may-answer';

/** A turn that can be given, as a form offers it. */
export interface TurnOffered {
  /** Day, shift and person, as the form sends them. */
  value: string;
  /** Name of whoever has it. */
  name: string;
  kind: 'on-site' | 'on-call';
  /** ms */
  start: number;
  end: number;
}

/** What somebody may ask for. */
export interface Offered {
  /** Those whose leave they may ask for, themselves first. */
  leaveOf: { key: string; name: string }[];
  /** Turns they may give. */
  gives: TurnOffered[];
  /** Everybody who could take one. */
  takers: { key: string; name: string }[];
  /** Turns of everybody, which may be given in return. */
  backs: TurnOffered[];
}

/** How far ahead turns are offered. */
const AHEAD_MS = 28 * 86_400_000;

/** What somebody may ask for: their own leave and turns, and as one who approves those of everybody. */
export function offeredTo({ self, isApprover }: Answerer, { people }: Facility, rota: Rota, atMs: number): Offered {
  const names = new Map(people.map(({ key, name }) => [key, name]));
  const turns = new Map(
    turnsOf(rota, atMs, atMs + AHEAD_MS).map(({ date, shift, person, kind, start, end }) => {
      const value = `${date}/${shift}/${person}`;
      return [value, { value, person, name: names.get(person) ?? person, kind, start, end }] as const;
    }),
  );
  const all = [...turns.values()];
  const told = ({ person: _, ...turn }: (typeof all)[number]): TurnOffered => turn;
  const everybody = people.map(({ key, name }) => ({ key, name }));
  const own = everybody.filter(({ key }) => key === self);
  return {
    leaveOf: isApprover ? [...own, ...everybody.filter(({ key }) => key !== self)] : own,
    gives: all.filter(({ person }) => isApprover || person === self).map(told),
    takers: everybody.filter(({ key }) => isApprover || key !== self),
    backs: all.filter(({ person }) => isApprover || person !== self).map(told),
  };
}
