import type { ResolvedSystem } from '../equipment/resolved';
import type { InputNote } from '../equipment/take';

/** By how much what is held while a figure is fitted may be off. */
export interface Shift {
  /** K that the room is warmer, and points of relative humidity that it is damper. */
  roomC: number;
  humidityPct: number;
  /** Factors on evaporation, on the heat of pumps and lamps, on the volume of water. */
  evaporation: number;
  power: number;
  volume: number;
}

/** As described. */
export const NO_SHIFT: Shift = { roomC: 0, humidityPct: 0, evaporation: 1, power: 1, volume: 1 };

/** Something that is held at the figure in use, with the ends of its plausible range. */
export interface Held {
  name: string;
  low: Shift;
  high: Shift;
}

/** K and points of humidity by which even a room that is described hour by hour may be off. Common practice, no source. */
const LEAST_ROOM_C = 0.5;
const LEAST_HUMIDITY = 5;

/**
 * What is held while heat loss or evaporation is fitted, each at both ends of its plausible range.
 *
 * @param resolved   of the nominal side
 * @param keys       keys of the tanks that make up the lump of water
 */
export function heldOf({ notes, room, tanks, devices }: ResolvedSystem, keys: ReadonlySet<string>): Held[] {
  const shift = (part: Partial<Shift>): Shift => ({ ...NO_SHIFT, ...part });
  const own = tanks.filter(({ tank }) => keys.has(tank.key));
  const air = offsets(noteAt(notes, /^rooms\/[^/]+\/temperatureC$/), room.temperatureC[0] ?? 0, LEAST_ROOM_C);
  const damp = offsets(noteAt(notes, /^rooms\/[^/]+\/humidityPct$/), room.humidityPct[0] ?? 0, LEAST_HUMIDITY);
  const share = (field: string, size: (key: string) => number, of: readonly string[]) =>
    factors(notes, field, size, of);
  const tankKeys = own.map(({ tank }) => tank.key);
  const sizeOf = (key: string) => own.find(({ tank }) => tank.key === key);
  const evaporation = share('evaporationActivity', (key) => sizeOf(key)?.evaporation ?? 0, tankKeys);
  const volume = share('volumeL', (key) => sizeOf(key)?.volume ?? 0, tankKeys);
  const heating = devices.filter(({ equipment }) => equipment.type !== 'heater' && equipment.type !== 'chiller');
  const heatOf = (key: string) => heating.find(({ equipment }) => equipment.key === key);
  const power = share(
    'heatToWater',
    (key) => (heatOf(key)?.watts ?? 0) * (heatOf(key)?.heatShare ?? 0),
    heating.map(({ equipment }) => equipment.key),
  );
  return [
    { name: 'temperature of the room', low: shift({ roomC: air[0] }), high: shift({ roomC: air[1] }) },
    { name: 'humidity of the room', low: shift({ humidityPct: damp[0] }), high: shift({ humidityPct: damp[1] }) },
    { name: 'evaporation', low: shift({ evaporation: evaporation[0] }), high: shift({ evaporation: evaporation[1] }) },
    { name: 'heat of pumps and lamps', low: shift({ power: power[0] }), high: shift({ power: power[1] }) },
    { name: 'volume of water', low: shift({ volume: volume[0] }), high: shift({ volume: volume[1] }) },
  ];
}

function noteAt(notes: readonly InputNote[], path: RegExp): InputNote | undefined {
  return notes.find((note) => path.test(note.path));
}

/** How far a figure may lie from its value to either side, at least so much. */
function offsets(note: InputNote | undefined, value: number, least: number): [number, number] {
  const { low, high } = note ?? { low: value, high: value };
  return [Math.min(-least, low - value), Math.max(least, high - value)];
}

/** The ends of a sum of figures as parts of it, when all of them lie at the same end of their ranges. */
function factors(
  notes: readonly InputNote[],
  field: string,
  size: (key: string) => number,
  keys: readonly string[],
): [number, number] {
  const sum = { value: 0, low: 0, high: 0 };
  for (const key of keys) {
    const note = notes.find(({ path }) => path.endsWith(`/${key}/${field}`));
    const is = size(key);
    sum.value += is;
    sum.low += note && note.value !== 0 ? (is * note.low) / note.value : is;
    sum.high += note && note.value !== 0 ? (is * note.high) / note.value : is;
  }
  return sum.value > 0 ? [sum.low / sum.value, sum.high / sum.value] : [1, 1];
}
