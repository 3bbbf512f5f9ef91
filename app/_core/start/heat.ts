import type { CarriedOutBy } from '../facility/site';
import type { Sensor, Tank } from '../facility/system';
import type { CutOut, Thermostat } from '../plans/plan';
import type { Safeguard } from '../plans/safeguard';
import type { HeatAnswer } from './answers';
import { entered, type Ground, onCircuit, oneOf, type Parts, plainPlan, TEST_EVERY_DAYS } from './parts';

/** Half the dead band, K: half a kelvin altogether is what the review asks for. */
const HALF_BAND = 0.25;
/** From the heater's band to the chiller's, K; less sets them against each other. Common practice, no source. */
const APART = 1;

/** Heaters and a chiller with their thermostats, and the probes they read. */
export function heatParts({ answers, tanks, plant }: Ground): Parts {
  const { heat, power } = answers;
  if (!heat) return {};
  const probes = new Map<string, Sensor>();
  const heated = answers.sump ? [plant] : tanks;
  const heaters = heatersOf(heat, heated, probes, power.heat);
  const chiller = chillerOf(heat, plant, probes, power.heat);
  return {
    equipment: [...(heaters.equipment ?? []), ...chiller],
    safeguards: heaters.safeguards ?? [],
    sensors: [...probes.values()],
  };
}

function heatersOf(
  { heaters, keptAtC, by }: HeatAnswer,
  tanks: readonly Tank[],
  probes: Map<string, Sensor>,
  circuit: string | undefined,
): Parts {
  if (!heaters) return {};
  const { count, eachW, cutOut } = heaters;
  const safeguards: Safeguard[] = [];
  const equipment = Array.from({ length: count }, (_, at) => {
    const named = oneOf('heater', 'Heater', at, count);
    const tank = tanks[at % tanks.length]?.key ?? '';
    const line: CutOut[] = [];
    if (cutOut) {
      const safeguard = `${named.key}-cut-out`;
      line.push({ quantity: 'temperature', tank, above: cutOut.aboveC, reset: cutOut.reset, safeguard });
      safeguards.push({
        key: safeguard,
        name: `Cut-out of ${named.name}`,
        kind: 'cut-out',
        testEveryDays: TEST_EVERY_DAYS,
        tests: [],
      });
    }
    const regulation = thermostat(keptAtC - HALF_BAND, keptAtC + HALF_BAND, by, probeFor(probes, by, named, tank));
    return {
      ...named,
      type: 'heater' as const,
      tank,
      ...onCircuit(circuit),
      ratedW: entered(eachW),
      plan: plainPlan(regulation, { cutOuts: line }),
    };
  });
  return { equipment, safeguards };
}

function chillerOf(
  { chiller, heaters, keptAtC, by }: HeatAnswer,
  { key: tank }: Tank,
  probes: Map<string, Sensor>,
  circuit: string | undefined,
): NonNullable<Parts['equipment']> {
  if (!chiller) return [];
  const named = { key: 'chiller', name: 'Chiller' };
  const low = heaters ? keptAtC + HALF_BAND + APART : keptAtC - HALF_BAND;
  const regulation = thermostat(low, low + 2 * HALF_BAND, by, probeFor(probes, by, named, tank));
  return [
    {
      ...named,
      type: 'chiller',
      tank,
      ...onCircuit(circuit),
      coolingW: entered(chiller.coolingW),
      plan: plainPlan(regulation),
    },
  ];
}

function thermostat(lowC: number, highC: number, by: CarriedOutBy, sensor: string): Thermostat {
  const bare = (value: number) => Number(value.toFixed(2));
  return { kind: 'thermostat', sensors: [sensor], vote: 'single', lowC: bare(lowC), highC: bare(highC), by };
}

/** Key of the probe something regulates by: its own in what is hard-wired, else one that all in the same water share. */
function probeFor(
  probes: Map<string, Sensor>,
  by: CarriedOutBy,
  named: { key: string; name: string },
  tank: string,
): string {
  const key = by === 'hard-wired' ? `${named.key}-probe` : `${tank}-probe`;
  const name = by === 'hard-wired' ? `Probe of ${named.name}` : `Regulating probe, ${tank.replaceAll('-', ' ')}`;
  probes.set(key, { key, name, quantity: 'temperature', tank });
  return key;
}
