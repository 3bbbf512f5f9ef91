import type { Facility } from '../facility/facility';
import type { Sensor, System } from '../facility/system';
import { atmospheresFromAltitude } from '../water/pressure-from-altitude';
import { calibrationLine } from './calibrated';
import { type CalibrationCheck, type Check, WATER_QUANTITIES, type WaterQuantity, type WaterTestCheck } from './check';
import { testCheck } from './check-safeguards';
import { nearestLimits } from './check-sensors';
import words from './check-words.json';
import { livedIn } from './places';
import { withQuiet } from './quiet-sheet';
import { type SheetPlace, sheetOf } from './sheet';
import { ASPECTS } from './slot';

/** What is asked of the water of a tank whether or not a sensor is described for it. Common practice, no source. */
const ALWAYS_ASKED: readonly WaterQuantity[] = ['temperature', 'ph', 'ammonia', 'nitrite', 'nitrate'];
/** Asked as well where the water is salt. Common practice, no source. */
const SALT_ASKED: readonly WaterQuantity[] = ['salinity', 'alkalinity'];
/** Instruments that are held against something known, and whether they show a slope. */
const CALIBRATED: Partial<Record<Sensor['quantity'], { slope?: true }>> = {
  ph: { slope: true },
  redox: {},
  oxygen: {},
  'oxygen-saturation': {},
  conductivity: {},
  salinity: {},
  temperature: {},
};

/**
 * Every line that follows from the description, place by place in the order of walking: all that a round can see, a water test
 * of each tank that is lived in, the calibration of each instrument, and the test of each safeguard, due or not.
 * @param day   ISO date: what is off by then is left out
 */
export function describedPlaces(facility: Facility, day: string): SheetPlace[] {
  const everything = { sees: [...ASPECTS] };
  const { places } = sheetOf(facility, everything, day);
  const all = places.map((place): SheetPlace => {
    const seen = place.checks.filter(({ kind }) => kind !== 'test');
    const system = facility.systems.find(({ key }) => key === place.system?.key);
    if (!system) return { ...place, checks: [...seen, ...tests(null, facility.safeguards, day)] };
    if (place.tank !== undefined) return { ...place, checks: [...seen, waterTest(facility, system, place.tank)] };
    const bare = livedIn(system).length === 0 ? system.tanks.slice(0, 1) : [];
    const more = [
      ...bare.map(({ key }) => waterTest(facility, system, key)),
      ...system.sensors.flatMap((sensor) => calibration(system, sensor)),
      ...tests(system.key, system.safeguards, day),
    ];
    return { ...place, checks: [...seen, ...more] };
  });
  return withQuiet(facility, all, day);
}

function tests(system: string | null, safeguards: Facility['safeguards'], day: string): Check[] {
  return safeguards.flatMap((one) => testCheck(system, one, day) ?? []);
}

function waterTest(facility: Facility, system: System, tank: string): WaterTestCheck {
  const asked = WATER_QUANTITIES.filter(
    (quantity) =>
      ALWAYS_ASKED.includes(quantity) ||
      (SALT_ASKED.includes(quantity) && system.salinity.value !== 0) ||
      system.sensors.some((one) => one.quantity === quantity),
  );
  const name = system.tanks.find(({ key }) => key === tank)?.name ?? tank;
  return {
    kind: 'water-test',
    key: `${system.key}/tank/${tank}/water`,
    about: { noun: 'tank', system: system.key, key: tank },
    what: `${name}: water test`,
    why: words.lines.water,
    asks: asked.map((quantity) => askedOf(system, tank, quantity)),
    given: {
      phScale: system.phScale ?? 'nbs',
      pressureAtm: atmospheresFromAltitude(facility.site.altitudeM?.value ?? 0),
      ...(system.salinity.value !== null && { salinity: system.salinity.value }),
    },
  };
}

/** A figure is a reading of the sensor in the tank; one elsewhere in the water may read something else. */
function askedOf(system: System, tank: string, quantity: WaterQuantity): WaterTestCheck['asks'][number] {
  const sensor = system.sensors.find((one) => one.quantity === quantity && one.tank === tank);
  const alarm = sensor && nearestLimits(system, sensor.key);
  return { quantity, sensor: sensor?.key ?? null, ...(alarm && { alarm }) };
}

function calibration(system: System, sensor: Sensor): CalibrationCheck[] {
  const how = CALIBRATED[sensor.quantity];
  if (!how) return [];
  const within = sensor.accuracy?.value;
  return [
    {
      kind: 'calibration',
      key: calibrationLine(system.key, sensor.key),
      about: { noun: 'sensor', system: system.key, key: sensor.key },
      what: `${sensor.name}: calibration`,
      why: words.lines.calibration,
      quantity: sensor.quantity,
      ...(typeof within === 'number' && { within }),
      ...(sensor.calibrationDue !== undefined && { due: sensor.calibrationDue }),
      ...how,
    },
  ];
}
