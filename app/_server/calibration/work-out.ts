import 'server-only';
import type { Calibration, FittedStretch, Found } from '#core/calibration/found';
import { coolingStretches } from '#core/calibration/heater-off';
import { type ClockS, mixedWith } from '#core/calibration/lump';
import { oxygenStretches } from '#core/calibration/oxygen-stretches';
import { type NoTarget, type Target, targetOf } from '#core/calibration/target';
import { resolveSystem } from '#core/equipment/resolve';
import type { ResolvedSystem, ResolvedTank } from '#core/equipment/resolved';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { fitEvaporation } from './fit-evaporation';
import { fitGas } from './fit-gas';
import { fitHeatLoss } from './fit-heat-loss';
import type { Recorded } from './recorded';
import words from './refusals.json';

/** One figure that readings were asked for, and what they answered. */
export interface WorkedOut {
  is: Calibration;
  /** Names of the sensors it comes from. */
  from: string[];
  /** How the stretches were told, in words; empty where the list says it. */
  how: string;
  stretches: FittedStretch[];
  found: Found | null;
  target: Target | null;
  /** Why there is no figure, or why it cannot be taken over. */
  refused: string[];
}

/** What everything is worked out from. */
export interface Working {
  facility: Facility;
  system: System;
  recorded: Recorded;
  clockS: ClockS;
  leftOut: ReadonlySet<string>;
}

interface Water {
  resolved: ResolvedSystem;
  /** The tanks that mix. */
  tanks: ResolvedTank[];
  keys: Set<string>;
}

type Answer = Pick<WorkedOut, 'from' | 'how' | 'stretches' | 'found'> & { refused: string[] };

const NOTHING = { from: [], how: '', stretches: [], found: null } as const;
const BY = {
  watts: 'Heaters and chillers were off by the power they drew.',
  plan: 'The power of some heaters is not read: they count as off while the water fell above where their plan has them come on.',
  'nothing-heats': 'Nothing here heats or cools the water.',
} as const;

/** Works out what the readings say of one figure. */
export async function workOut(is: Calibration, working: Working): Promise<WorkedOut> {
  const { facility, system } = working;
  const resolved = resolveSystem(facility, system, 'nominal');
  if (resolved.missing.length > 0) return { is, ...empty(words.unknown + resolved.missing.join(', ')), target: null };
  const main = [...resolved.tanks]
    .filter(({ tank }) => tank.role !== 'reservoir')
    .sort((a, b) => b.volume - a.volume)[0];
  if (!main) return { is, ...empty(words['no-temperature']), target: null };
  const tanks = mixedWith(resolved, main.tank.key);
  const water = { resolved, tanks, keys: new Set(tanks.map(({ tank }) => tank.key)) };
  const answer = await ANSWERS[is](working, water);
  const { found } = answer;
  const target = found ? targetOf(found, system, resolved, tanks) : null;
  if (typeof target === 'string')
    return { is, ...answer, target: null, refused: [...answer.refused, words[target satisfies NoTarget]] };
  return { is, ...answer, target };
}

function empty(refused: string): Answer {
  return { ...NOTHING, from: [], stretches: [], refused: [refused] };
}

const ANSWERS: Record<Calibration, (working: Working, water: Water) => Promise<Answer>> = {
  'heat-loss': heatLoss,
  evaporation,
  'oxygen-transfer': (working, water) => oxygen('oxygen-transfer', working, water),
  'oxygen-use': (working, water) => oxygen('oxygen-use', working, water),
};

async function heatLoss({ system, recorded, clockS, leftOut }: Working, water: Water): Promise<Answer> {
  const { resolved, tanks, keys } = water;
  const probe = await recorded.probe('temperature', keys);
  if (!probe) return empty(words['no-temperature']);
  const watts = await recorded.watts();
  const cooling = coolingStretches(system, keys, { temperature: probe.points, watts, lagS: probe.lagS }, clockS);
  const fit = fitHeatLoss({ resolved, tanks, stretches: cooling.stretches, watts, clockS, leftOut });
  const few = [words['few-nights'], ...(cooling.switched > 0 ? [words.switched] : [])];
  const refused = fit.found ? [] : fit.vagueBy === null ? few : [words.vague + fit.vagueBy];
  return { from: [probe.sensor.name], how: BY[cooling.by], stretches: fit.stretches, found: fit.found, refused };
}

async function evaporation({ recorded, clockS, leftOut }: Working, water: Water): Promise<Answer> {
  const { resolved, tanks, keys } = water;
  const { uses, by } = await recorded.used();
  if (uses.length === 0 && !resolved.devices.some(({ equipment }) => equipment.type === 'top-off'))
    return empty(words['no-top-off']);
  const probe = await recorded.probe('temperature', keys);
  const fit = fitEvaporation({ resolved, tanks, uses, temperature: probe?.points ?? [], clockS, leftOut });
  const how =
    by === 'level'
      ? 'By the level of the reservoir, from one refilling to the next.'
      : 'By what was noted on rounds as used since the round before. Water that left otherwise, with skimmate or a leak, counts as evaporated.';
  const from = probe ? [probe.sensor.name] : [];
  return { from, how, ...fit, refused: fit.found ? [] : [words['few-uses']] };
}

async function oxygen(
  is: 'oxygen-transfer' | 'oxygen-use',
  { system, recorded, clockS, leftOut }: Working,
  { resolved, keys }: Water,
): Promise<Answer> {
  const probe = await recorded.probe('oxygen', keys);
  if (!probe) return empty(words['no-oxygen']);
  const [watts, warm] = await Promise.all([recorded.watts(), recorded.probe('temperature', keys)]);
  const stretches = oxygenStretches(system, keys, { oxygen: probe.points, watts, lagS: probe.lagS }, clockS);
  const tank = probe.sensor.tank ?? '';
  const { vagueBy, ...fit } = fitGas({ resolved, tank, stretches, temperature: warm?.points ?? [], leftOut }, is);
  const refused = fit.found ? [] : [vagueBy === null ? words['few-oxygen'] : words.vague + vagueBy];
  return { from: [probe.sensor.name, ...(warm ? [warm.sensor.name] : [])], how: '', ...fit, refused };
}
