import { DEFAULTS } from '../../equipment/defaults';
import type { Facility } from '../../facility/facility';
import type { Circuit } from '../../facility/site';
import type { Equipment } from '../../facility/system';
import type { Fault } from '../../faults/fault';
import { fault as utilityFails } from '../../faults/modes/utility-fails';
import { fault as noGenerator } from '../../faults/modes/utility-fails-no-generator';
import { HOUR, MINUTE } from '../../time/week';
import { watched } from '../in-place-facts';
import type { Subject } from '../trial';
import { faultPart } from './combination';
import { failing } from './joint';
import type { Look } from './look';
import type { Steps } from './two-step';

/** s that a generator runs until it fails: whoever came has seen everything run and has left. Common practice, no source. */
const GENERATOR_RAN_S = 2 * HOUR;
/** s that a standby has carried the duty when it fails as well: nobody had a spare on the first day. Common practice, no source. */
const STOOD_IN_S = 24 * HOUR;

/** Types of which a second one stands in for the first. */
const STAND_IN: readonly Equipment['type'][] = [
  'return-pump',
  'air-blower',
  'circulation-pump',
  'heater',
  'chiller',
  'filter',
];

/** What can fail of what stood in: the generator, a battery, and each of two alike after the other. */
export function secondFailures(look: Look): Steps[] {
  return [...generator(look), ...battery(look), ...standIns(look)];
}

/** The generator starts, everything runs, whoever came leaves, and it dies. */
function generator({ facility, context }: Look): Steps[] {
  const { site } = facility;
  if (!site.generator || !context.credit.claimed(site.generator.safeguard)) return [];
  const gapS = Math.min(GENERATOR_RAN_S, ((site.generator.fuelH?.value ?? DEFAULTS.generatorFuelH.value) * HOUR) / 2);
  const spent = facility.circuits.filter((c) => onlyBattery(c) && batteryS(c) <= gapS);
  const first = ofSite(facility, utilityFails);
  const second = ofSite(facility, {
    ...noGenerator,
    id: 'generator-dies',
    title: 'Generator starts and dies',
    befall: (upset, thing, ...where) => {
      noGenerator.befall(upset, thing, ...where);
      for (const { key } of spent) upset.deadCircuits.add(key);
    },
  });
  return [
    steps(first, second, gapS, 'the call was answered, everything ran on the generator, and whoever came had left'),
  ];
}

/** The battery carries what hangs on it, whoever came leaves, and it runs out. */
function battery({ facility, system, context }: Look): Steps[] {
  const used = new Set(system.equipment.map(({ circuit }) => circuit));
  const carried = facility.circuits.filter(
    (c) => used.has(c.key) && onlyBattery(c) && context.credit.claimed(c.upsSafeguard),
  );
  if (carried.length === 0) return [];
  const first = ofSite(facility, utilityFails);
  const second = ofSite(facility, {
    ...utilityFails,
    id: 'battery-runs-out',
    title: 'Battery runs out',
    befall: (upset, thing, ...where) => {
      utilityFails.befall(upset, thing, ...where);
      for (const { key } of carried) upset.deadCircuits.add(key);
    },
  });
  const gapS = Math.max(...carried.map(batteryS));
  return [
    steps(first, second, gapS, 'the call was answered, and the battery carried what it carries until it was empty'),
  ];
}

/** Of two alike the second carries the duty since the first has failed, and fails as well. */
function standIns(look: Look): Steps[] {
  const { system, facility, context } = look;
  const items = system.equipment.filter(({ type }) => STAND_IN.includes(type));
  return items.flatMap((duty) =>
    items.flatMap((standby): Steps[] => {
      if (duty === standby || !standsIn(duty, standby)) return [];
      const [first, second] = [duty, standby].map(({ key }) => failing(facility, system, key, 'dead'));
      if (!first || !second) return [];
      const unseen = watched(context, standby) ? '' : ', and no alarm watches it';
      return [
        steps(first, second, STOOD_IN_S, `${standby.name} carried the duty since ${duty.name} had failed${unseen}`),
      ];
    }),
  );
}

/** Whether two do the same for the same water. */
function standsIn(a: Equipment, b: Equipment): boolean {
  if (a.type !== b.type) return false;
  const tanks = (e: Equipment) => (e.type === 'air-blower' && e.stones ? e.stones.map(({ tank }) => tank) : [e.tank]);
  return tanks(a).some((tank) => tanks(b).includes(tank));
}

function onlyBattery({ backedBy }: Circuit): boolean {
  return backedBy.includes('ups') && !backedBy.includes('generator');
}

function batteryS({ upsMin }: Circuit): number {
  return (upsMin?.value ?? DEFAULTS.upsMin.value) * MINUTE;
}

function ofSite({ site }: Facility, fault: Fault): Subject {
  return { fault, thing: { kind: 'site', key: site.key, name: site.name }, state: 'normal' };
}

function steps(first: Subject, second: Subject, gapS: number, because: string): Steps {
  return { first, second, gapS, parts: [faultPart(first), faultPart(second)], because };
}
