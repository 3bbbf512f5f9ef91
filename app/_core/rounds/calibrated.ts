import type { Facility } from '../facility/facility';
import type { Sensor, SensorQuantity } from '../facility/system';
import { addDays } from '../time/add-days';

/** What was last found when an instrument was held against something known, on a round that is signed. */
export interface LastCalibration {
  /** ISO date at the site. */
  on: string;
  /** Whether the instrument might go on. */
  fit: boolean;
}

/**
 * Days that a calibration counts where the description says until when one does but not how often it is due: electrodes and what
 * fouls monthly, thermometers quarterly. Common practice, no source.
 */
const USUAL_DAYS: Partial<Record<SensorQuantity, number>> = {
  ph: 30,
  redox: 30,
  oxygen: 30,
  'oxygen-saturation': 30,
  conductivity: 30,
  salinity: 30,
  temperature: 91,
};

/** Key of the line of a sheet on which an instrument is held against something known. */
export function calibrationLine(system: string, sensor: string): string {
  return `${system}/sensor/${sensor}/calibration`;
}

/**
 * Until when the calibration of a sensor counts: so many days from the last one, or longer where the description says so, which
 * may know of one that stands on no round. An instrument that was found unfit counts no longer, whatever was said before.
 *
 * @param last   null when it stands on no round
 * @returns      ISO date, the last day on which it counts; undefined where nobody said that it runs out
 */
export function calibrationDueOf(
  sensor: Pick<Sensor, 'quantity' | 'calibrationDue' | 'calibrateEveryDays'>,
  last: LastCalibration | null,
): string | undefined {
  const { calibrationDue: described, calibrateEveryDays, quantity } = sensor;
  if (!last) return described;
  if (!last.fit) return earlier(described, addDays(last.on, -1));
  const every = calibrateEveryDays ?? (described === undefined ? undefined : USUAL_DAYS[quantity]);
  if (every === undefined) return described;
  const counts = addDays(last.on, every);
  // ISO dates order as text.
  return described !== undefined && described > counts ? described : counts;
}

/**
 * The site as it is judged: each sensor with the day until which its calibration counts, going by what stands on rounds.
 *
 * @param last   by the key of the line
 */
export function withCalibrations(facility: Facility, last: ReadonlyMap<string, LastCalibration>): Facility {
  if (last.size === 0) return facility;
  const systems = facility.systems.map((system) => ({
    ...system,
    sensors: system.sensors.map((sensor) => {
      const found = last.get(calibrationLine(system.key, sensor.key));
      const due = found && calibrationDueOf(sensor, found);
      return due === undefined ? sensor : { ...sensor, calibrationDue: due };
    }),
  }));
  return { ...facility, systems };
}

/**
 * Instruments whose calibration counts no longer, the longest first.
 *
 * @param facility   as it is judged: see `withCalibrations`
 * @param day        ISO date
 */
export function overdueCalibrations(
  { systems }: Pick<Facility, 'systems'>,
  day: string,
): { sensor: string; system: string; due: string }[] {
  return systems
    .flatMap((system) =>
      system.sensors.map(({ name, calibrationDue: due }) => ({ sensor: name, system: system.name, due })),
    )
    .flatMap(({ due, ...rest }) => (due !== undefined && due < day ? [{ ...rest, due }] : []))
    .sort((a, b) => (a.due < b.due ? -1 : 1));
}

function earlier(one: string | undefined, other: string): string {
  return one !== undefined && one < other ? one : other;
}
