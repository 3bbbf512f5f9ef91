import type { SafeguardKind } from '../../plans/safeguard';
import type { Facility } from '../facility';
import type { Path } from '../path';
import type { Equipment, Sensor, System, Tank } from '../system';
import type { Report } from './report';

/** What the whole site offers to be referred to. */
export interface SiteScope {
  key: string;
  rooms: ReadonlySet<string>;
  circuits: ReadonlySet<string>;
  /** Names of RCD groups. */
  rcds: ReadonlySet<string>;
  gateways: ReadonlySet<string>;
  monitors: ReadonlySet<string>;
  people: ReadonlySet<string>;
  competences: ReadonlySet<string>;
  systems: ReadonlySet<string>;
  profiles: ReadonlySet<string>;
  safeguards: ReadonlyMap<string, SafeguardKind>;
}

/** What one system offers to be referred to, with the path it stands at. */
export interface SystemScope {
  path: Path;
  site: SiteScope;
  system: System;
  tanks: ReadonlyMap<string, Tank>;
  equipment: ReadonlyMap<string, Equipment>;
  sensors: ReadonlyMap<string, Sensor>;
  safeguards: ReadonlyMap<string, SafeguardKind>;
}

/** Index of the site's keys. `defaultProfiles` are the keys of the tolerance profiles that every site has. */
export function siteScope(facility: Facility, defaultProfiles: Iterable<string>): SiteScope {
  return {
    key: facility.site.key,
    rooms: keys(facility.rooms),
    circuits: keys(facility.circuits),
    rcds: new Set(facility.circuits.flatMap(({ rcd }) => rcd ?? [])),
    monitors: keys(facility.monitors),
    gateways: keys(facility.monitors.filter((monitor) => monitor.kind === 'gateway')),
    people: keys(facility.people),
    competences: keys(facility.site.competences ?? []),
    systems: keys(facility.systems),
    profiles: new Set([...defaultProfiles, ...keys(facility.profiles)]),
    safeguards: new Map(facility.safeguards.map((one) => [one.key, one.kind])),
  };
}

/** Index of one system's keys; `at` is its position in the file. A system leans on its own safeguards and the site's. */
export function systemScope(system: System, at: number, site: SiteScope): SystemScope {
  return {
    path: ['systems', at],
    site,
    system,
    tanks: byKey(system.tanks),
    equipment: byKey(system.equipment),
    sensors: byKey(system.sensors),
    safeguards: new Map([...site.safeguards, ...system.safeguards.map((one) => [one.key, one.kind] as const)]),
  };
}

/** Says so for every key that an earlier member of the same list has already. */
export function checkUnique(list: readonly { key: string }[], path: Path, report: Report): void {
  const first = new Map<string, number>();
  list.forEach(({ key }, at) => {
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, at);
    else report.wrong([...path, at, 'key'], `must differ from every other in its list; [${earlier}] is "${key}" too`);
  });
}

function keys(list: readonly { key: string }[]): Set<string> {
  return new Set(list.map((one) => one.key));
}

function byKey<T extends { key: string }>(list: readonly T[]): Map<string, T> {
  return new Map(list.map((one) => [one.key, one]));
}
