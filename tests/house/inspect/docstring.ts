import type { ExportedFunction } from './exported-functions';

const BASE =
  '(?:°C|°F|K|kJ|J|kW|W|V|Ah|A|kg|mg|g|m|mm|cm|mL|L|min|s|h|d|a|kPa|Pa|mmHg|atm|mol|µmol|mS|mJ|ppm|PSS-78|%|1)[²³⁴⁶]?';
const UNIT = new RegExp(`^${BASE}(?:[/·](?:${BASE}|\\(${BASE}(?:·${BASE})*\\)))*(?=[\\s,;.)]|$)`);
/** A pure number says so by its range, by being a part of something, or in the law object beside the function. */
const PURE = /^(?:[±−-]?\d|part\b|share\b|factor\b)/;

/** What the law object beside a function says of its arguments: name and unit, empty for a pure number. */
export type ArgumentUnits = Record<string, string>;

/**
 * What is missing from the docstring of a function of the core.
 *
 * @returns sentences without a full stop; none when the docstring is there
 */
export const docstringFaults = ({ name, docstring }: ExportedFunction): string[] =>
  docstring === '' ? [`${name} has no docstring`] : [];

/**
 * What is missing from the docstring of a law of water: a unit for every number that goes in or comes out (the same as
 * in its law object), where it comes from, and how it was checked. A law may refer to another of its file for its source
 * ("as `density`", "as `density`, of which it is the exact derivative") and for its check ("checked: as `density`").
 *
 * @param law    the law
 * @param file   all functions its file exports
 * @param units  what its law object says of its arguments; empty when it has none
 */
export function lawFaults(law: ExportedFunction, file: ExportedFunction[], units: ArgumentUnits = {}): string[] {
  const { name, docstring, parameters, returnsNumber } = law;
  if (docstring === '') return [];
  const numbers = parameters.filter((parameter) => parameter.isNumber).map((parameter) => parameter.name);
  const unitless = numbers.filter((number) => !hasUnit(saidOf(docstring, `@param\\s+${number}`), units[number]));
  const faults = unitless.map((number) => `${name} gives no unit for ${number}`);
  if (returnsNumber && !hasUnit(saidOf(docstring, '@returns')))
    faults.push(`${name} gives no unit for what it returns`);
  for (const label of ['Source', 'Checked']) {
    if (!says(label, law, file)) faults.push(`${name} has no line "${label}"`);
  }
  return faults;
}

const saidOf = (docstring: string, tag: string): string =>
  docstring.match(new RegExp(`^${tag}\\s+(.*)$`, 'm'))?.[1] ?? '';

function hasUnit(said: string, unit?: string): boolean {
  if (unit === '') return said !== '';
  return unit === undefined ? UNIT.test(said) || PURE.test(said) : said.split(/[\s,;]/)[0] === unit;
}

/** Whether a docstring has a line of its own for this, or refers, perhaps in steps, to one in its file that has. */
function says(label: string, { name, docstring }: ExportedFunction, file: ExportedFunction[]): boolean {
  if (new RegExp(`^${label} +\\S`, 'm').test(docstring)) return true;
  const reference = label === 'Source' ? /: as `(\w+)`/ : /checked[^.`]*: as `(\w+)`/i;
  const other = file.find((candidate) => candidate.name === docstring.match(reference)?.[1]);
  const rest = file.filter((candidate) => candidate.name !== name);
  return other !== undefined && other.name !== name && says(label, other, rest);
}

/** Whether a file opens with the three lines every room of the core opens with. */
export const opensRoom = (text: string): boolean =>
  /^\/\*\*\n \* What this room knows: \S[\s\S]*?\n \* What it leaves out: \S[\s\S]*?\n \* Where the numbers come from: \S/.test(
    text,
  );
