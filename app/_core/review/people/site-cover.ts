import type { Facility } from '../../facility/facility';
import type { Column } from '../../plans/credit';
import { HOURS_OF_WEEK } from '../../time/week';
import type { Verdict } from '../result';
import { type CoverChange, coverChanges, worthOf } from './compare-cover';
import type { SystemDemand } from './demand';
import { type Scene, usualScenes } from './scene';
import { type CoveredCase, decided, type LeastHour, leastHours, type SystemCover, systemCover } from './system-cover';
import { weakStretches, type WeakStretch } from './weakest';
import { isNothing, type WhatIf, withChanges } from './what-if';

/** The usual week of one system in one column. */
interface SystemWeek {
  /** Least time to spare by hour of the week, s; −Infinity where nobody ever comes, null where nothing is harmed. */
  spareS: (number | null)[];
  /** The same with the changes that are asked about; null where none is. */
  changedS: (number | null)[] | null;
  stretches: WeakStretch[];
  /** Fault cases that whoever comes is too late for at every hour: with the most they ever have to spare, s. */
  lost: { id: string; title: string; verdict: Verdict; bestS: number }[];
  /** Fault cases that the curve is drawn over. */
  drawn: number;
}

/** The cover of one system. */
export interface CoverOfSystem extends Record<Column, SystemWeek> {
  system: string;
  name: string;
}

/** What the changes that are asked about come to: fault cases, those that win most first, those that lose most first. */
export interface WhatIfSaid {
  won: CoverChange[];
  lost: CoverChange[];
}

/** The cover of a site over its usual week. */
export interface SiteCover {
  /** The system with the least to spare first. */
  systems: CoverOfSystem[];
  /** Over all systems, the least to spare first. */
  weakest: Record<Column, WeakStretch[]>;
  whatIf: Record<Column, WhatIfSaid> | null;
}

const COLUMNS = ['claimed', 'tested'] as const;

/**
 * The cover of a site: what its usual week leaves to spare in every system, where it is weakest and who would come, and what a
 * change of people would make of it. Nothing is simulated.
 *
 * @param demands   what the fault cases of its systems ask of people; a system without one is left out
 * @param on        ISO date on which competences count
 */
export function siteCover(
  facility: Facility,
  demands: readonly SystemDemand[],
  on: string,
  what: WhatIf = {},
): SiteCover {
  const scenes = usualScenes(facility, on);
  const changed = isNothing(what) ? null : usualScenes(withChanges(facility, what), on);
  const names = new Map(facility.systems.map(({ key, name }) => [key, name]));
  const found = demands.map((demand) => {
    const { system } = demand;
    const weeks = COLUMNS.map((column) => weekOf(demand, column, scenes(system), changed?.(system) ?? null));
    return { system, name: names.get(system) ?? system, weeks };
  });
  const of = (at: number) => found.flatMap(({ weeks }) => weeks[at] ?? []);
  const [claimed, tested] = COLUMNS.map((_, at) => ({
    weakest: of(at)
      .flatMap(({ week }) => week.stretches)
      .sort(byLeast),
    said: saidOf(of(at).flatMap(({ changes }) => changes)),
  }));
  const systems = found.flatMap(({ system, name, weeks: [first, second] }) =>
    first && second ? [{ system, name, claimed: first.week, tested: second.week }] : [],
  );
  return {
    systems: systems.sort((a, b) => leastOf(a.claimed) - leastOf(b.claimed) || 0),
    weakest: { claimed: claimed?.weakest ?? [], tested: tested?.weakest ?? [] },
    whatIf: changed && claimed && tested ? { claimed: claimed.said, tested: tested.said } : null,
  };
}

/** Order of stretches: the least to spare first; of those alike the longest. */
function byLeast(a: WeakStretch, b: WeakStretch): number {
  return a.spareS === b.spareS ? b.hours - a.hours : a.spareS - b.spareS;
}

/** The least time to spare of a week, s; Infinity where nothing is harmed. */
export function leastOf({ spareS }: Pick<SystemWeek, 'spareS'>): number {
  return Math.min(...spareS.map((s) => s ?? Number.POSITIVE_INFINITY));
}

function weekOf(
  demand: SystemDemand,
  column: Column,
  scene: Scene,
  changed: Scene | null,
): { week: SystemWeek; changes: CoverChange[] } {
  const cover = systemCover(demand, scene, column);
  const after = changed && systemCover(demand, changed, column);
  const drawn = decided(cover);
  const least = leastHours(drawn, HOURS_OF_WEEK);
  const week: SystemWeek = {
    spareS: sparesOf(least),
    changedS: after && sparesOf(leastHours(sameCases(after, drawn), HOURS_OF_WEEK)),
    stretches: weakStretches(demand.system, least, true),
    lost: lostIn(cover),
    drawn: drawn.length,
  };
  return { week, changes: after ? coverChanges(cover, after) : [] };
}

/** The fault cases of a cover that another one is drawn over, so that both curves speak of the same. */
function sameCases({ cases }: SystemCover, drawn: readonly CoveredCase[]): CoveredCase[] {
  const ids = new Set(drawn.map(({ id }) => id));
  return cases.filter(({ id }) => ids.has(id));
}

function sparesOf(least: readonly (LeastHour | null)[]): (number | null)[] {
  return least.map((one) => one?.spareS ?? null);
}

function lostIn({ cases }: SystemCover): SystemWeek['lost'] {
  const lost = cases.filter(({ isLostAlways }) => isLostAlways);
  const best = ({ week }: CoveredCase) => Math.max(...week.spareS.filter((_, h) => week.lastS[h] !== null));
  return lost
    .map((one) => ({ id: one.id, title: one.title, verdict: one.week.verdict, bestS: best(one) }))
    .sort((a, b) => (a.bestS === b.bestS ? 0 : b.bestS - a.bestS));
}

function saidOf(changes: readonly CoverChange[]): WhatIfSaid {
  const ranked = [...changes].sort((a, b) => worthOf(b) - worthOf(a));
  return { won: ranked.filter((one) => worthOf(one) > 0), lost: ranked.filter((one) => worthOf(one) < 0).reverse() };
}
