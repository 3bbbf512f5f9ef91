import type { Facility } from '#core/facility/facility';
import type { Safeguard, SafeguardTest } from '#core/plans/safeguard';

/** A site as it was described on a day: later tests of its safeguards were not made yet, and nothing was taken off later. */
export function asOf(facility: Facility, on: string): Facility {
  const then = (list: readonly Safeguard[]) =>
    list.map(({ off, ...safeguard }) => ({
      ...safeguard,
      tests: safeguard.tests.filter((test) => test.on <= on),
      ...(off && off.since <= on && { off }),
    }));
  return {
    ...facility,
    safeguards: then(facility.safeguards),
    systems: facility.systems.map((system) => ({ ...system, safeguards: then(system.safeguards) })),
  };
}

/** A safeguard by its key and its system's; null for one of the site. */
export interface Placed {
  system: string | null;
  safeguard: string;
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
