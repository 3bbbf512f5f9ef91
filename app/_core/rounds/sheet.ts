import type { Facility } from '../facility/facility';
import type { System } from '../facility/system';
import type { Check } from './check';
import { equipmentChecks } from './check-equipment';
import { safeguardChecks } from './check-safeguards';
import { sensorChecks } from './check-sensors';
import { stockCheck, tankChecks } from './check-tanks';
import words from './check-words.json';
import { withQuiet } from './quiet-sheet';
import type { Signer } from './round-sheet';
import { type Cleanness, cleannessOf, inWalkingOrder, livedIn } from './places';
import type { Aspect, RoundSlot } from './slot';

export const SHEET_FORMAT = 'holdfast.sheet/1';

/** Somewhere one stands while looking: the plant of a system, or one of its tanks. */
export interface SheetPlace {
  name: string;
  /** Key and name of its system; null for the site's own plant. */
  system: { key: string; name: string } | null;
  /** Key of its tank; left out for the plant. */
  tank?: string;
  cleanness: Cleanness;
  checks: Check[];
}

/** What is looked at on one round, place by place in the order of walking. Kept with the round as it was when it was begun. */
export interface Sheet {
  format: typeof SHEET_FORMAT;
  places: SheetPlace[];
  /** Who may sign it, at least, and whether somebody else signs it as well; left out: whoever may walk it, alone. */
  signing?: { by?: Signer; second?: true };
}

/**
 * The sheet of a round: every line stands for a thing that is described, and follows from what the round sees of it. Places
 * come clean before dirty, for hands, nets and water carry disease from one to the next.
 * @param slot which systems it passes, and what it sees
 * @param day the day of the round at the site, ISO date: tests of safeguards due by then stand on it
 */
export function sheetOf(facility: Facility, slot: Pick<RoundSlot, 'systems' | 'sees'>, day: string): Sheet {
  const systems = facility.systems.filter(({ key }) => slot.systems?.includes(key) ?? true);
  const own = slot.systems === undefined ? sitePlace(facility, slot.sees, day) : null;
  const places = inWalkingOrder(systems).flatMap((system) => systemPlaces(system, slot.sees, day));
  const walked = (own ? [own, ...places] : places).filter(({ checks }) => checks.length > 0);
  return { format: SHEET_FORMAT, places: withQuiet(facility, walked, day) };
}

/** Every line of a sheet, in order. */
export function checksOf(sheet: Sheet): Check[] {
  return sheet.places.flatMap(({ checks }) => checks);
}

/** What belongs to no system is seen by a round that passes all of them. */
function sitePlace(facility: Facility, sees: readonly Aspect[], day: string): SheetPlace | null {
  if (!sees.includes('equipment')) return null;
  const about = { noun: 'site', system: null, key: facility.site.key } as const;
  const checks: Check[] = [];
  if (facility.circuits.length > 0)
    checks.push({
      kind: 'yes-no',
      key: '-/site/circuits',
      about,
      what: 'Breakers and RCDs: none tripped',
      why: words.lines.circuits,
    });
  if (facility.site.generator)
    checks.push({
      kind: 'yes-no',
      key: '-/site/generator',
      about,
      what: 'Generator: set to start by itself, fuel as usual',
      why: words.lines.generator,
    });
  checks.push(...facility.safeguards.flatMap((safeguard) => safeguardChecks(null, safeguard, day)));
  return { name: 'Power and what belongs to the whole site', system: null, cleanness: 0, checks };
}

function systemPlaces(system: System, sees: readonly Aspect[], day: string): SheetPlace[] {
  const { key, name } = system;
  const tanks = livedIn(system);
  const at = (checks: Check[], place: string): SheetPlace => ({
    name: place,
    system: { key, name },
    cleanness: cleannessOf(system),
    checks,
  });
  const plant = at(plantChecks(system, new Set(tanks.map((tank) => tank.key)), sees, day), `${name}: plant`);
  return [
    plant,
    ...tanks.map((tank) => ({ ...at(checksAt(system, tank.key, sees), `${name}: ${tank.name}`), tank: tank.key })),
  ];
}

function plantChecks(system: System, lived: ReadonlySet<string>, sees: readonly Aspect[], day: string): Check[] {
  const inPlant = (tank: string | undefined) => tank === undefined || !lived.has(tank);
  const checks: Check[] = [];
  if (sees.includes('floor'))
    checks.push({
      kind: 'yes-no',
      key: `${system.key}/system/floor`,
      about: { noun: 'system', system: system.key, key: system.key },
      what: 'Floor round it dry',
      why: words.lines.floor,
    });
  for (const tank of system.tanks) if (inPlant(tank.key)) checks.push(...tankChecks(system, tank, sees));
  for (const one of system.equipment) if (inPlant(one.tank)) checks.push(...equipmentChecks(system, one, sees));
  for (const one of system.sensors) if (inPlant(tankOf(system, one))) checks.push(...sensorChecks(system, one, sees));
  if (sees.includes('animals'))
    for (const stock of system.stock) if (inPlant(stock.tank)) checks.push(stockCheck(system, stock));
  if (sees.includes('equipment'))
    for (const one of system.safeguards) checks.push(...safeguardChecks(system.key, one, day));
  return checks;
}

function checksAt(system: System, tank: string, sees: readonly Aspect[]): Check[] {
  const here = (key: string | undefined) => key === tank;
  return [
    ...(sees.includes('animals')
      ? system.stock.filter((stock) => here(stock.tank)).map((stock) => stockCheck(system, stock))
      : []),
    ...system.tanks.filter(({ key }) => here(key)).flatMap((one) => tankChecks(system, one, sees)),
    ...system.sensors.filter((one) => here(tankOf(system, one))).flatMap((one) => sensorChecks(system, one, sees)),
    ...system.equipment.filter((one) => here(one.tank)).flatMap((one) => equipmentChecks(system, one, sees)),
  ];
}

function tankOf(system: System, sensor: System['sensors'][number]): string | undefined {
  return sensor.tank ?? system.equipment.find(({ key }) => key === sensor.equipment)?.tank;
}
