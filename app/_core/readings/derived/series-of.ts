import type { Facility } from '../../facility/facility';
import type { Figure } from '../../facility/figure';
import type { Sensor, SensorQuantity, System } from '../../facility/system';
import { atmospheresFromAltitude } from '../../water/pressure-from-altitude';
import { type DerivedInput, type DerivedKind, type DerivedSeries, derivedKey, type InputRole } from './series';

const MINUTE_MS = 60_000;
/** How old what stands beside the leading reading may be: water changes slowly. Common practice, no source. */
const BESIDE_MS = 60 * MINUTE_MS;
/** How old the pH beside a test of ammonia may be, which mostly is of the same round. Common practice, no source. */
const SAME_DAY_MS = 26 * 60 * MINUTE_MS;
/** How far apart the readings of a pair may be: a probe that died must not look like one that differs. Common practice, no source. */
const PAIR_MS = 5 * MINUTE_MS;

/** Quantities of which two sensors in one tank should read the same. */
const PAIRED: readonly SensorQuantity[] = [
  'temperature',
  'ph',
  'oxygen',
  'oxygen-saturation',
  'salinity',
  'conductivity',
  'level',
  'redox',
];

/** What follows from a sensor of a quantity together with others. */
const LED_BY: Partial<Record<SensorQuantity, (system: System, lead: Sensor, pressureAtm: number) => DerivedSeries[]>> =
  {
    oxygen: saturation,
    ammonia: unionised,
    conductivity: salinity,
    watts: beyond,
  };

/**
 * The series that follow from the sensors of a system. A thermometer, a pH probe or a salinity of the same tank counts before
 * one elsewhere in the system's water; where no sensor reads the salinity, the one it is kept at stands for it.
 *
 * @param facility   the whole site: its height sets the pressure of the air
 */
export function derivedSeriesOf(facility: Pick<Facility, 'site'>, system: System): DerivedSeries[] {
  const pressureAtm = atmospheresFromAltitude(facility.site.altitudeM?.value ?? 0);
  return [
    ...system.sensors.flatMap((lead) => LED_BY[lead.quantity]?.(system, lead, pressureAtm) ?? []),
    ...differences(system.sensors),
    ...topOffs(system),
  ];
}

function saturation(system: System, lead: Sensor, pressureAtm: number): DerivedSeries[] {
  const temperature = nearest(system, lead, 'temperature');
  const salt = saltOf(system, lead);
  if (!(temperature && salt)) return [];
  const inputs = [input('temperature', temperature, BESIDE_MS), ...salt.inputs];
  const given = { ...salt.given, pressureAtm };
  return [made('oxygen-saturation', lead, 'Oxygen saturation', 'oxygen-saturation', { inputs, given })];
}

function unionised(system: System, lead: Sensor): DerivedSeries[] {
  const temperature = nearest(system, lead, 'temperature');
  const ph = nearest(system, lead, 'ph');
  const salt = saltOf(system, lead);
  if (!(temperature && ph && salt)) return [];
  const inputs = [input('temperature', temperature, SAME_DAY_MS), input('ph', ph, SAME_DAY_MS), ...salt.inputs];
  const given = { ...salt.given, phScale: ph.phScale ?? system.phScale ?? ('nbs' as const) };
  return [made('unionised-ammonia', lead, 'Un-ionised ammonia', 'unionised-ammonia', { inputs, given })];
}

/**
 * Fresh water has salts of its own: its conductivity is no salinity. What the meter has brought to a temperature is that of the
 * water at this one; how it does so is its own affair, and a common factor is within 0.4 % of sea water from 20 to 25 °C
 * (tests/reference/compensated-conductivity.json).
 */
function salinity(system: System, lead: Sensor): DerivedSeries[] {
  if (system.salinity.value === 0) return [];
  const { compensatedToC } = lead;
  if (compensatedToC !== undefined)
    return [made('salinity', lead, 'Salinity', 'salinity', { inputs: [], given: { compensatedToC } })];
  const temperature = nearest(system, lead, 'temperature');
  if (!temperature) return [];
  const inputs = [input('temperature', temperature, BESIDE_MS)];
  return [made('salinity', lead, 'Salinity', 'salinity', { inputs, given: {} })];
}

function beyond(system: System, lead: Sensor): DerivedSeries[] {
  const range = system.equipment.find(({ key }) => key === lead.equipment)?.wattsRange;
  return range ? [made('watts-beyond', lead, 'Watts beyond the range', 'watts', { inputs: [], given: range })] : [];
}

function differences(sensors: readonly Sensor[]): DerivedSeries[] {
  return sensors.flatMap((one, at) => {
    const isFirst = !sensors.slice(0, at).some((before) => isPair(before, one));
    const others = isFirst ? sensors.slice(at + 1).filter((other) => isPair(one, other)) : [];
    return others.map(
      (other): DerivedSeries => ({
        key: derivedKey('difference', one.key, other.key),
        name: `Difference: ${one.name} less ${other.name}`,
        kind: 'difference',
        quantity: one.quantity === 'temperature' ? 'temperature-difference' : one.quantity,
        inputs: [input('lead', one, 0), input('other', other, PAIR_MS)],
        given: {},
      }),
    );
  });
}

function isPair(one: Sensor, other: Sensor): boolean {
  return (
    one.tank !== undefined &&
    one.tank === other.tank &&
    one.quantity === other.quantity &&
    one.compensatedToC === other.compensatedToC &&
    PAIRED.includes(one.quantity)
  );
}

/** By the level of the reservoir where that is read, else by how long the pump of the top-off draws watts. */
function topOffs(system: System): DerivedSeries[] {
  const found = system.equipment.flatMap((equipment) => {
    if (equipment.type !== 'top-off') return [];
    const reservoir = system.tanks.find(({ key, role }) => key === equipment.source && role === 'reservoir');
    const level = system.sensors.find(
      ({ quantity, tank }) => quantity === 'level' && reservoir && tank === reservoir.key,
    );
    const surfaceM2 = known(reservoir?.surfaceM2);
    if (level && surfaceM2 !== null) return [topOff(level, { surfaceM2 })];
    const meter = system.sensors.find(({ quantity, equipment: of }) => quantity === 'watts' && of === equipment.key);
    const flowLPerH = known(equipment.flowLPerH);
    return meter && flowLPerH !== null ? [topOff(meter, { flowLPerH })] : [];
  });
  return found.filter(({ key }, at) => found.findIndex((one) => one.key === key) === at);
}

function topOff(lead: Sensor, given: DerivedSeries['given']): DerivedSeries {
  return made('top-off', lead, 'Top-off in a day', 'top-off', { inputs: [], given });
}

function made(
  kind: DerivedKind,
  lead: Sensor,
  name: string,
  quantity: DerivedSeries['quantity'],
  { inputs, given }: Pick<DerivedSeries, 'inputs' | 'given'>,
): DerivedSeries {
  const key = derivedKey(kind, lead.key);
  return {
    key,
    name: `${name}, from ${lead.name}`,
    kind,
    quantity,
    inputs: [input('lead', lead, 0), ...inputs],
    given,
  };
}

function input(role: InputRole, { key: sensor }: Sensor, ageMs: number): DerivedInput {
  return { role, sensor, ageMs };
}

function saltOf(system: System, lead: Sensor): Pick<DerivedSeries, 'inputs' | 'given'> | null {
  const kept = known(system.salinity);
  const sensor = kept === 0 ? undefined : nearest(system, lead, 'salinity');
  const given = kept === null ? {} : { salinity: kept };
  if (sensor) return { inputs: [input('salinity', sensor, SAME_DAY_MS)], given };
  return kept === null ? null : { inputs: [], given };
}

function nearest(system: System, lead: Sensor, quantity: SensorQuantity): Sensor | undefined {
  const all = system.sensors.filter((one) => one.quantity === quantity);
  return all.find(({ tank }) => tank !== undefined && tank === lead.tank) ?? all[0];
}

function known(figure: Figure | undefined): number | null {
  return figure?.value ?? null;
}
