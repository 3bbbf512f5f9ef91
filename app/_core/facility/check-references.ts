import type { Facility } from './facility';
import { DEFAULT_PROFILES } from './profiles';
import { checkAlarms } from './references/check-alarms';
import { checkEquipment } from './references/check-equipment';
import { checkPeople } from './references/check-people';
import { checkPlans } from './references/check-plan';
import { checkPower } from './references/check-power';
import { checkProfiles } from './references/check-profiles';
import { checkRates } from './references/check-rates';
import { checkSafeguards } from './references/check-safeguards';
import { checkSensors } from './references/check-sensors';
import { checkStates } from './references/check-states';
import { checkStock } from './references/check-stock';
import { checkTanks } from './references/check-tanks';
import { type ReferenceProblem, Report } from './references/report';
import { checkUnique, type SystemScope, siteScope, systemScope } from './references/scope';

const SITE_LISTS = [
  'rooms',
  'circuits',
  'monitors',
  'safeguards',
  'people',
  'shifts',
  'rounds',
  'profiles',
  'systems',
] as const;
const SYSTEM_LISTS = ['tanks', 'equipment', 'sensors', 'stock', 'safeguards', 'alarms'] as const;
const CHECKS: readonly ((scope: SystemScope, report: Report) => void)[] = [
  checkTanks,
  checkEquipment,
  checkPlans,
  checkSensors,
  checkStock,
  checkAlarms,
  checkStates,
  checkSafeguards,
  checkRates,
];

/**
 * Whether a well-formed facility also fits together: every key that is referred to stands in it and is of the right
 * kind, keys are not used twice, limits are the right way round, fields belong to their type.
 *
 * @param facility a facility whose every field is well formed by itself
 * @param unread   keys that stand in the file but could not be read; references to them are let be
 * @returns every problem, never only the first, in the order of the file's lists; empty when all fits
 */
export function checkReferences(facility: Facility, unread: ReadonlySet<string> = new Set()): ReferenceProblem[] {
  const report = new Report(unread);
  const defaults = new Set(DEFAULT_PROFILES.map(({ key }) => key));
  const site = siteScope(facility, defaults);
  for (const list of SITE_LISTS) checkUnique(facility[list], [list], report);
  checkUnique(facility.sheets ?? [], ['sheets'], report);
  checkPower(facility, site, report);
  checkPeople(facility, site, report);
  checkProfiles(facility.profiles, defaults, report);
  facility.systems.forEach((system, at) => {
    const scope = systemScope(system, at, site);
    report.names([...scope.path, 'room'], system.room, 'a room', site.rooms);
    for (const list of SYSTEM_LISTS) checkUnique(system[list], [...scope.path, list], report);
    checkUnique(system.papers ?? [], [...scope.path, 'papers'], report);
    for (const check of CHECKS) check(scope, report);
  });
  return report.problems;
}
