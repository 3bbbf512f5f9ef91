import { stateMinOf } from '../equipment/defaults';
import { fault as stateAlone } from '../faults/modes/state-alone';
import type { Column } from '../plans/credit';
import type { Aspect } from '../rounds/slot';
import { MINUTE } from '../time/week';
import type { Context, View } from './context';
import { type Subject, type Trial, tryAt } from './trial';

/** What tells of a fault: when each alarm was raised and each aspect showed it, s after the onset. */
export interface News {
  alarms: Map<string, number>;
  signs: Map<Aspect, number>;
  /** Safeguards that had a part in it, also in what the state does alone and in what the fault does once it is over. */
  leanedOn: ReadonlySet<string>;
}

/** Local hour at which a state is looked at with nothing wrong: what it raises and shows hardly depends on it. */
const ANY_HOUR = 12;

/**
 * What a course tells of its fault. What the operating state raises and shows by itself is no news while it lasts: people
 * expect it. It counts from the state's end, if the fault keeps it up. What stands in normal running with nothing wrong tells
 * nothing at all.
 */
export function newsOf(context: Context, view: View, subject: Subject, column: Column, trial: Trial): News {
  const raw = rawNews(trial);
  if (subject.fault.id === stateAlone.id) return raw;
  if (subject.state === 'normal') view.told.set(idOf(context, subject, column, trial.hour), raw);
  const standing = standingOf(context, view, subject.state);
  const lasting = lastingOf(context, view, subject, column, trial);
  return {
    alarms: sifted(raw.alarms, standing.alarms, lasting.alarms),
    signs: shownBy(context, subject, sifted(raw.signs, standing.signs, lasting.signs)),
    leanedOn: new Set([...raw.leanedOn, ...standing.leanedOn, ...lasting.leanedOn]),
  };
}

/** What is raised and shown in a state with nothing wrong. */
function standingOf(context: Context, view: View, state: Subject['state']): News {
  const known = view.standing.get(state);
  if (known) return known;
  const { record } = view.nominal;
  // The bands of the rounds hold the healthy water; only a level or an alarm can stand out, and hardly ever does.
  const quiet = state === 'normal' && record.alarms.size === 0 && !record.signs.has('level');
  const { key, name } = context.system;
  const subject: Subject = { fault: stateAlone, thing: { kind: 'system', key, name }, state };
  const news = quiet ? nothing() : rawNews(tryAt(context, view, subject, 'claimed', ANY_HOUR));
  view.standing.set(state, news);
  return news;
}

/** What the fault keeps up when the state should be over: as in normal running, counted from then. */
function lastingOf(context: Context, view: View, subject: Subject, column: Column, trial: Trial): News {
  const { fault, state } = subject;
  if (state === 'normal') return nothing();
  const endS = lengthOf(context, state);
  const { span, alarms } = trial.machine;
  if (span?.endsS === Number.POSITIVE_INFINITY) {
    const raw = rawNews(trial);
    const delayOf = (key: string) => alarms.find((alarm) => alarm.key === key)?.delayS ?? 0;
    return {
      alarms: new Map([...raw.alarms].map(([key, t]) => [key, Math.max(t, endS + delayOf(key))])),
      signs: new Map([...raw.signs].map(([aspect, t]) => [aspect, Math.max(t, endS)])),
      leanedOn: raw.leanedOn,
    };
  }
  if (fault.states !== 'running' && !fault.states.includes('normal')) return nothing();
  const normal: Subject = { ...subject, state: 'normal' };
  const id = idOf(context, normal, column, trial.hour);
  const told = view.told.get(id) ?? rawNews(tryAt(context, view, normal, column, trial.hour));
  view.told.set(id, told);
  const later = <T>(times: Map<T, number>) => new Map([...times].map(([key, t]) => [key, endS + t]));
  return { alarms: later(told.alarms), signs: later(told.signs), leanedOn: told.leanedOn };
}

function idOf({ creditText }: Context, { fault, thing }: Subject, column: Column, hour: number): string {
  return `${fault.id}:${thing.key}:${creditText[column]}:${hour}`;
}

/** How long a state is meant to last, s. */
function lengthOf(context: Context, state: Exclude<Subject['state'], 'normal'>): number {
  const described = context.system.states.find((s) => s.name === state)?.lastsMin?.value;
  return MINUTE * (described ?? stateMinOf(state).value);
}

/** Times of what does not stand by itself; of what does, when it lasts longer than that. */
function sifted<T>(times: Map<T, number>, standing: Map<T, number>, lasting: Map<T, number>): Map<T, number> {
  const news = new Map<T, number>();
  for (const [key, t] of times) {
    const from = standing.has(key) ? lasting.get(key) : t;
    if (from !== undefined) news.set(key, from);
  }
  return news;
}

/** With what the failure mode itself shows on a round: at once, or from when a state that is never ended should be over. */
function shownBy(context: Context, { fault, state }: Subject, signs: Map<Aspect, number>): Map<Aspect, number> {
  const only = fault.states !== 'running' && state !== 'normal' ? lengthOf(context, state) : 0;
  for (const aspect of fault.shows) earlier(signs, aspect, only);
  return signs;
}

/** Everything that a course raises and shows, expected or not. Where whoever is called does not answer, no alarm tells anybody anything. */
export function rawNews({ record, machine, blueprint }: Trial): News {
  const signs = new Map<Aspect, number>();
  for (const [aspect, t] of record.signs) earlier(signs, aspect as Aspect, t);
  for (const harm of record.harms) if (harm.class === 'floor') earlier(signs, 'floor', harm.atS);
  for (const { limit, fromS } of record.exposures) {
    if (machine.limits[limit]?.class === 'animals') earlier(signs, 'animals', fromS);
  }
  return {
    alarms: blueprint.upset.nobodyAnswers ? new Map() : new Map(record.alarms),
    signs,
    leanedOn: leanedOnIn({ record, machine }),
  };
}

/** Safeguards without which a course or what it raises would be, or might be, another. */
export function leanedOnIn({ record, machine }: Pick<Trial, 'record' | 'machine'>): ReadonlySet<string> {
  const ways = machine.alarms.flatMap(({ path, silent }) => (silent ? [...path, silent] : path));
  return new Set([...record.acted, ...ways.flat().flatMap(({ thanks }) => thanks)]);
}

function earlier(signs: Map<Aspect, number>, aspect: Aspect, t: number): void {
  signs.set(aspect, Math.min(t, signs.get(aspect) ?? t));
}

function nothing(): News {
  return { alarms: new Map(), signs: new Map(), leanedOn: new Set() };
}
