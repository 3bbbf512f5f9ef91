import 'server-only';
import type { Facility } from '#core/facility/facility';
import { type ChangeEffect, type ChangeEvent, type ChangeState, changeState, mayCome } from '#core/rota/change';
import type { Span } from '#core/rota/nobody';
import type { RestWarning } from '#core/rota/rest';
import type { Rota } from '#core/rota/turns';
import type { KeptChange, KeptTurn } from '#data/rota/changes';
import { effectOfChange, minutesIn, stretchOf } from './change-parts';
import { type Answerer, whyNot } from './who-may-answer';

/** A turn in words. */
export interface TurnSaid {
  /** ISO date on which it begins. */
  date: string;
  /** From when to when on the wall; null when the shift is described no more. */
  times: string | null;
  kind: 'on-site' | 'on-call' | null;
}

/** Leave or a swap as a page tells it; instants in ms, persons by name. */
export interface ChangeLine {
  id: string;
  kind: 'leave' | 'swap';
  person: string;
  takes: string | null;
  /** Leave: its two ends. */
  from: number | null;
  to: number | null;
  turn: TurnSaid | null;
  back: TurnSaid | null;
  why: string | null;
  askedBy: string;
  askedAt: number;
  state: ChangeState;
  events: { kind: ChangeEvent; by: string; at: number; why: string | null }[];
  /** What whoever looks may say of it. */
  may: ChangeEvent[];
  /** Whether somebody else has to approve it: it is of their own duties. */
  isOwn: boolean;
  /** What it would leave; null once it is decided. */
  effect: { nobody: Span[]; nobodyMin: number; lacking: { name: string; spans: Span[] }[]; rest: RestWarning[] } | null;
}

interface Around {
  facility: Facility;
  rota: Rota;
  /** Names of accounts by id. */
  accounts: ReadonlyMap<string, string>;
  asker: Answerer;
  atMs: number;
}

/** A change in words, with what may be said of it. */
export function lineOf(change: KeptChange, { facility, rota, accounts, asker, atMs }: Around): ChangeLine {
  const state = changeState(change.events.map(({ kind }) => kind));
  const next = mayCome(change.kind, state);
  const isOver = stretchOf(change, facility.site.zone).to <= atMs;
  const names = new Map(facility.people.map(({ key, name }) => [key, name]));
  const nameOf = ({ key }: { key: string | null }) => (key === null ? 'somebody who left' : (names.get(key) ?? key));
  const account = (id: string) => accounts.get(id) ?? id;
  return {
    ...{ id: change.id, kind: change.kind, state },
    // Why somebody is away is nobody's business but theirs and of those who approve it.
    why: whyNot(asker, change, 'withdrawn') === null ? change.why : null,
    person: nameOf(change.person),
    takes: change.takes && nameOf(change.takes),
    from: change.from?.getTime() ?? null,
    to: change.to?.getTime() ?? null,
    turn: change.turn && turnSaid(change.turn, facility),
    back: change.back && turnSaid(change.back, facility),
    askedBy: account(change.askedBy),
    askedAt: change.askedAt.getTime(),
    events: change.events.map((event) => ({ ...event, by: account(event.by), at: event.at.getTime() })),
    may: next.filter((comes) => whyNot(asker, change, comes) === null && !(isOver && comes === 'approved')),
    isOwn: next.includes('approved') && whyNot(asker, change, 'approved')?.why === 'own-work',
    effect: next.includes('withdrawn')
      ? effectSaid(effectOfChange(rota, change, facility.site.competences), facility)
      : null,
  };
}

function turnSaid({ shift, date }: KeptTurn, { shifts }: Facility): TurnSaid {
  const known = shifts.find(({ key }) => key === shift.key);
  return { date, times: known ? `${known.from} to ${known.to}` : null, kind: known?.kind ?? null };
}

function effectSaid({ nobody, lacking, rest }: ChangeEffect, { site, people }: Facility): ChangeLine['effect'] {
  const competences = new Map((site.competences ?? []).map(({ key, name }) => [key, name]));
  const names = new Map(people.map(({ key, name }) => [key, name]));
  return {
    nobody,
    nobodyMin: minutesIn(nobody),
    lacking: lacking.map(({ competence, spans }) => ({ name: competences.get(competence) ?? competence, spans })),
    rest: rest.map((one) => ({ ...one, person: names.get(one.person) ?? one.person })),
  };
}
