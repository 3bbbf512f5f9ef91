import type { SensorQuantity } from '../../facility/system';
import table from './file-units.json';

/** A unit in which a file may write a quantity. */
export interface FileUnit {
  /** Its word in `readings/units`, which converts it. */
  unit: string;
  /** How a person reads it. */
  name: string;
}

const UNITS: Readonly<Record<SensorQuantity, readonly (FileUnit & { said: string[] })[]>> = table;

/** Units in which a quantity may be written; what it is reckoned as is part of each, for “mg/L” alone does not say it. */
export function fileUnits(quantity: SensorQuantity): FileUnit[] {
  return UNITS[quantity].map(({ unit, name }) => ({ unit, name }));
}

/**
 * The unit that the name of a column says, of a quantity that is known.
 *
 * @param name   such as "WaterTemp, °C (serial 7)", or a unit in brackets
 * @returns      its word, or null when the name says none of this quantity
 */
export function unitOf(quantity: SensorQuantity, name: string): string | null {
  const said = candidates(name);
  return UNITS[quantity].find((one) => one.said.some((word) => said.includes(word)))?.unit ?? null;
}

/** Whether a cell says a unit of anything. */
export function isUnit(cell: string): boolean {
  const said = candidates(`(${cell})`);
  return Object.values(UNITS).some((units) => units.some((one) => one.said.some((word) => said.includes(word))));
}

/** What may be a unit in a name: what stands in brackets, after a comma, or at its end. */
function candidates(name: string): string[] {
  const bracketed = Array.from(name.matchAll(/[[({]([^\])}]*)[\])}]/g), (found) => found[1] ?? '');
  const open = name.replace(/[[({][^\])}]*[\])}]/g, ' ');
  const after = open.split(',').slice(1);
  const last = /([^\s_]+)\s*$/.exec(open)?.[1] ?? '';
  const whole = [...bracketed, ...after, last].map(plain).filter((word) => word !== '');
  return last.endsWith('%') ? [...whole, '%'] : whole;
}

/** A unit as it is compared: small letters, one way to write micro and degree. */
function plain(word: string): string {
  return word
    .trim()
    .toLowerCase()
    .replace(/[µμ]/g, 'u')
    .replace(/^(deg(rees?)?|[°º])\s*/, '')
    .replace(/\s+/g, ' ')
    .replaceAll('³', '3');
}
