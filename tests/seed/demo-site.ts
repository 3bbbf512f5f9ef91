import { readFileSync } from 'node:fs';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { type Context, contextOf } from '#core/review/context';
import { judge } from '#core/review/judge';
import type { FaultCase } from '#core/review/result';
import { subjectsOf } from '#core/review/subjects';
import { readFacility } from '#shape/facility/read-facility';
import { DEMO_DATE, DEMO_FILES } from '../../seed/demo';

/** Text of a file of the demonstration, by its path from the top of the tree. */
export const demoText = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

const known = new Map<string, Facility>();

/** A site of the demonstration, by key; read once. */
export function demoSite(key: string): Facility {
  const site = known.get(key) ?? readSite(key);
  known.set(key, site);
  return site;
}

function readSite(key: string): Facility {
  const file = DEMO_FILES.find((one) => one.key === key);
  if (!file) throw new Error(`There is no demonstration site ${key}`);
  const read = readFacility(demoText(file.path));
  if (!read.ok) throw new Error(`${file.path}: ${JSON.stringify(read.reason)}`);
  return read.value;
}

/** A system of a site, by key. */
export function systemOf(facility: Facility, key: string): System {
  const found = facility.systems.find((system) => system.key === key);
  if (!found) throw new Error(`${facility.site.key} has no system ${key}`);
  return found;
}

/**
 * Judges single fault cases of one site on the day of the demonstration. What the cases of a system share is set up once.
 *
 * @returns for a system and the id of a fault case (`heater-on:heater:normal`): the judged case
 */
export function judgeOf(facility: Facility): (system: string, id: string) => FaultCase {
  const contexts = new Map<string, Context>();
  return (key, id) => {
    const system = systemOf(facility, key);
    const context = contexts.get(key) ?? contextOf(facility, system, DEMO_DATE);
    contexts.set(key, context);
    const subject = subjectsOf(facility, system).find(
      ({ fault, thing, state }) => `${fault.id}:${thing.key}:${state}` === id,
    );
    if (!subject) throw new Error(`${key} has no fault case ${id}`);
    return judge(context, subject);
  };
}
