import type { Facility } from '#core/facility/facility';
import type { Stock } from '#core/facility/stock';
import type { Safeguard, SafeguardTest } from '#core/plans/safeguard';
import type { Loss } from './losses';

/**
 * A site as it was described at the end of a day: later tests of its safeguards were not made yet, nothing was taken off
 * later, and what was lost later was there.
 */
export function asOf(facility: Facility, on: string, losses: readonly Loss[]): Facility {
  const then = (list: readonly Safeguard[]) =>
    list.map(({ off, ...safeguard }) => ({
      ...safeguard,
      tests: safeguard.tests.filter((test) => test.on <= on),
      ...(off && off.since <= on && { off }),
    }));
  return {
    ...facility,
    safeguards: then(facility.safeguards),
    systems: facility.systems.map((system) => ({
      ...system,
      safeguards: then(system.safeguards),
      stock: system.stock.map((stock) => ({ ...stock, count: countThen(losses, system.key, stock, on) })),
    })),
  };
}

function countThen(losses: readonly Loss[], system: string, { key, count }: Stock, on: string): number {
  const lost = losses.find((loss) => loss.system === system && loss.stock === key);
  return lost && on < lost.on ? lost.was : count;
}

/** A safeguard by its key and its system's; null for one of the site. */
export interface Placed {
  system: string | null;
  safeguard: string;
}

/** A site before it kept sheets of its own: they come into force on the day it is shown, so that none was missed before. */
export function withoutSheets({ sheets: _, ...facility }: Facility): Facility {
  return facility;
}

/** The tests that were made after a day, in order of their days. */
export function testsAfter(facility: Facility, on: string): (Placed & { test: SafeguardTest })[] {
  return placed(facility)
    .flatMap(({ system, safeguard }) =>
      safeguard.tests.filter((test) => test.on > on).map((test) => ({ system, safeguard: safeguard.key, test })),
    )
    .sort((a, b) => (a.test.on < b.test.on ? -1 : Number(a.test.on > b.test.on)));
}

/** The day on which the first safeguard was taken out of service after a day; null when none was. */
export function offAfter(facility: Facility, on: string): string | null {
  const days = placed(facility).flatMap(({ safeguard }) => safeguard.off?.since ?? []);
  return days.filter((day) => day > on).sort()[0] ?? null;
}

function placed({ safeguards, systems }: Facility): { system: string | null; safeguard: Safeguard }[] {
  return [
    ...safeguards.map((safeguard) => ({ system: null, safeguard })),
    ...systems.flatMap((system) => system.safeguards.map((safeguard) => ({ system: system.key, safeguard }))),
  ];
}
