import type { AlarmDefinition } from '../alarms/definition';
import type { Equipment, Sensor, System } from '../facility/system';
import type { Quality } from '../readings/reading';
import type { Proof } from './proofs';

/** The newest reading of a sensor. */
export interface Newest {
  atMs: number;
  value: number;
  quality: Quality;
}

/** What a reading says of a proof: that it is so, that it is not so, or nothing, so that somebody has to look. */
export interface Proved {
  says: 'shown' | 'contradicted' | 'nothing';
  /** The reading that says so, with its sensor by name; null when none does. */
  by: { sensor: string; quantity: Sensor['quantity']; value: number; atMs: number } | null;
}

/** Oldest that a reading may be and say how things stand, ms. Common practice, no source. */
export const FRESH_MS = 5 * 60_000;
/** W below which nothing runs: meters of sockets show a watt or two of nothing. Common practice, no source. */
const DRAWS_NOTHING_W = 2;
/** mm from its mark at which a level is back; twice that is not. Common practice, no source. */
const LEVEL_MM = 25;
/** Part of what the pumps are described to move below which the water stands, and above which it flows. Common practice, no source. */
const STANDS = 0.1;
const FLOWS = 0.5;
const NOTHING: Proved = { says: 'nothing', by: null };

/**
 * What the readings say of one proof. Only a good reading counts that is at most five minutes old and was taken after the state
 * began: an older one tells of the time before.
 *
 * @param newest    newest readings by key of the sensor
 * @param sinceMs   when the state began
 * @param atMs      the present
 */
export function provedBy(
  system: Pick<System, 'equipment' | 'sensors' | 'alarms'>,
  proof: Proof,
  newest: ReadonlyMap<string, Newest>,
  { sinceMs, atMs }: { sinceMs: number; atMs: number },
): Proved {
  const sensor = sensorOf(system, proof);
  const reading = sensor && newest.get(sensor.key);
  if (reading?.quality !== 'good' || !sensor) return NOTHING;
  if (reading.atMs <= sinceMs || atMs - reading.atMs > FRESH_MS) return NOTHING;
  const { value } = reading;
  const by = { sensor: sensor.name, quantity: sensor.quantity, value, atMs: reading.atMs };
  return { says: saysOf(system, proof, sensor, value), by };
}

/** The sensor that a proof is read off, if there is one. */
function sensorOf({ equipment, sensors }: Pick<System, 'equipment' | 'sensors'>, proof: Proof): Sensor | undefined {
  if (proof.kind === 'watts' || proof.kind === 'off') {
    const piece = pieceOf(equipment, proof);
    return sensors.find((one) => one.quantity === 'watts' && one.equipment === piece?.key);
  }
  if (proof.kind === 'shut' || proof.kind === 'ozone') return undefined;
  return sensors.find(({ quantity, name }) => quantity === proof.kind && name === proof.sensor);
}

function pieceOf(equipment: readonly Equipment[], { key }: Proof): Equipment | undefined {
  return equipment.find((one) => one.key === key.slice(key.indexOf('.') + 1));
}

function saysOf(
  system: Pick<System, 'equipment' | 'alarms'>,
  proof: Proof,
  sensor: Sensor,
  value: number,
): Proved['says'] {
  const piece = pieceOf(system.equipment, proof);
  switch (proof.kind) {
    case 'watts':
      return wattsSay(piece, proof.range, value);
    case 'off':
      if (value <= DRAWS_NOTHING_W) return 'shown';
      // Its own regulation may run it now: then drawing says nothing.
      return piece?.plan.regulation.kind === 'never' ? 'contradicted' : 'nothing';
    case 'flow':
      return flowSays(system.equipment, value);
    case 'level':
      if (Math.abs(value) <= LEVEL_MM) return 'shown';
      return Math.abs(value) > 2 * LEVEL_MM ? 'contradicted' : 'nothing';
    case 'oxidant':
      return oxidantSays(system.alarms, sensor.key, value);
    case 'shut':
    case 'ozone':
      return 'nothing';
  }
}

/** What draws nothing may be meant to, unless it is meant to run all the time; what draws something draws the right amount or not. */
function wattsSay(
  piece: Equipment | undefined,
  range: { minW: number; maxW: number } | null,
  value: number,
): Proved['says'] {
  if (value <= DRAWS_NOTHING_W) return piece?.plan.regulation.kind === 'always' ? 'contradicted' : 'nothing';
  if (range === null) return 'nothing';
  return value >= range.minW && value <= range.maxW ? 'shown' : 'contradicted';
}

function flowSays(equipment: readonly Equipment[], value: number): Proved['says'] {
  const meant = equipment
    .filter(({ type }) => type === 'return-pump')
    .reduce((sum, { flowLPerH }) => sum + (flowLPerH?.value ?? 0), 0);
  if (meant === 0) return value <= 0 ? 'contradicted' : 'nothing';
  if (value >= FLOWS * meant) return 'shown';
  return value < STANDS * meant ? 'contradicted' : 'nothing';
}

/** Held to the limit of the alarm that watches the sensor: what animals bear differs too much for one figure. */
function oxidantSays(alarms: readonly AlarmDefinition[], sensor: string, value: number): Proved['says'] {
  const limits = alarms.flatMap(({ on }) =>
    on.kind === 'sensor' && on.sensor === sensor && on.above !== undefined ? [on.above] : [],
  );
  if (limits.length === 0) return 'nothing';
  return value > Math.min(...limits) ? 'contradicted' : 'shown';
}
