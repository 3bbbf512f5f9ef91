import { resolveSystem } from '../equipment/resolve';
import type { ResolvedSystem } from '../equipment/resolved';
import { type Side, taker } from '../equipment/take';
import type { Facility } from '../facility/facility';
import { defaultProfile } from '../facility/profiles';
import type { Stock, ToleranceProfile } from '../facility/stock';
import type { StateName, System } from '../facility/system';
import { noUpset } from '../faults/upset';
import { type Column, type Credit, creditOf } from '../plans/credit';
import { type Cover, coverOf } from '../rota/cover';
import { type Walk, walksOf } from '../rounds/walks';
import type { ProfileOf } from '../simulate/build-limits';
import type { Blueprint } from '../simulate/build-machine';
import { type Nominal, nominal, notRun } from '../simulate/nominal';
import type { News } from './news';
import type { AlarmDesign, FaultCase } from './result';
import { creditText, fitTo, type ReviewCache } from './review-cache';
import { withLedgers } from './unproved';
import { usualOf } from './usual';

/** Longest a fault is followed, s: seven days. */
export const HORIZON = 7 * 86_400;

/** One system seen from one side of its plausible ranges. */
export interface View {
  side: Side;
  resolved: ResolvedSystem;
  cover: Cover;
  walks: Walk[];
  nominal: Nominal;
  /** Profiles whose usual bands reach as far as the healthy water goes. */
  profileOf: ProfileOf;
  /** What is raised and shown with nothing wrong, by operating state. */
  standing: Map<StateName, News>;
  /** What faults raise and show in normal running, by fault, thing, column and hour. */
  told: Map<string, News>;
  /** s from a call to standing there at the worst hour of the week, by who answers. */
  reach: Map<string, number>;
}

/** What the judging of one system needs again and again. */
export interface Context {
  facility: Facility;
  system: System;
  /** Site and system as they are simulated: lines that name no safeguard lean on one that nothing proves. */
  simulated: { facility: Facility; system: System };
  /** ISO date the tests are judged on. */
  on: string;
  credit: Record<Column, Credit>;
  profileOf: (stock: Stock) => ToleranceProfile;
  /** Fault cases judged so far, by id. */
  judged: Map<string, FaultCase>;
  cache: ReviewCache | null;
  /** Whether every fault case of the system has been judged. */
  isWhole: boolean;
  /** What is made of the alarms, once that was asked for; null before. */
  designs: AlarmDesign[] | null;
  /** What is counted on in each column, as text. */
  creditText: Record<Column, string>;
  /** The view from a side, made when first asked for. `only`: a single figure takes its bad end. */
  view: (side: Side, only?: string | null) => View;
}

/**
 * Set up the judging of one system. Nothing is simulated before it is asked for.
 * @param cache what the water did in earlier reviews of this system; receives what it does in this one
 * @param dead key of a safeguard that does not work though everybody counts on it; null when all do what is claimed
 */
export function contextOf(
  facility: Facility,
  system: System,
  on: string,
  dead: string | null = null,
  cache: ReviewCache | null = null,
): Context {
  if (cache) fitTo(cache, facility, system);
  const views = new Map<string, View>();
  const profiles = new Map(facility.profiles.map((p) => [p.key, p]));
  const profileOf = (stock: Stock) =>
    (stock.profile === undefined ? undefined : profiles.get(stock.profile)) ?? defaultProfile(system.kind);
  const credit = {
    claimed: lessOne(creditOf(facility, system, 'claimed', on), dead),
    tested: lessOne(creditOf(facility, system, 'tested', on), dead),
  };
  const context: Context = {
    facility,
    system,
    simulated: withLedgers(facility, system),
    on,
    credit,
    profileOf,
    judged: new Map(),
    cache,
    isWhole: false,
    designs: null,
    creditText: {
      claimed: creditText(facility, system, credit.claimed),
      tested: creditText(facility, system, credit.tested),
    },
    view: (side, only = null) => {
      const id = `${side} ${only ?? ''}`;
      const known = views.get(id);
      if (known) return known;
      const made = makeView(context, side, only);
      views.set(id, made);
      return made;
    },
  };
  return context;
}

function lessOne(credit: Credit, dead: string | null): Credit {
  return dead === null ? credit : (key) => key !== dead && credit(key);
}

function makeView(context: Context, side: Side, only: string | null): View {
  const { facility, system } = context.simulated;
  const resolved = resolveSystem(facility, system, side, only);
  const t = taker(side, only);
  const cover = coverOf(facility, t);
  resolved.notes.push(...t.notes);
  const known = resolved.missing.length === 0;
  const id = `${side} ${only ?? ''} ${context.creditText.claimed}`;
  const run = () => (known ? nominal(healthy(context, resolved)) : notRun(system.equipment.length));
  const normal = remembered(context.cache?.nominals, id, run);
  return {
    side,
    resolved,
    cover,
    walks: walksOf(facility, system.key, cover),
    nominal: normal,
    profileOf: usualOf(context.profileOf, resolved, normal),
    standing: remembered(context.cache?.standing, id, () => new Map()),
    told: remembered(context.cache?.told, id, () => new Map()),
    reach: new Map(),
  };
}

function remembered<V>(map: Map<string, V> | undefined, id: string, make: () => V): V {
  const known = map?.get(id);
  if (known !== undefined) return known;
  const made = make();
  map?.set(id, made);
  return made;
}

/** The system as its plan runs it, with nothing wrong and everything counted on. */
function healthy(context: Context, resolved: ResolvedSystem): Blueprint {
  const { simulated, credit, profileOf } = context;
  return {
    ...simulated,
    resolved,
    upset: noUpset(),
    credited: credit.claimed,
    state: 'normal',
    profileOf,
    snapshot: null,
  };
}
