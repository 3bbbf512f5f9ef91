import { EQUIPMENT_TYPES } from '#core/facility/system';
import labels from './labels.json';
import names from './option-names.json';
import ones from './one-of-a-list.json';

const LABELS: Readonly<Record<string, string>> = labels;
const NAMES: Readonly<Record<string, string>> = names;
const ONES: Readonly<Record<string, string>> = ones;
/** What a description ends with that a form says in another way: the unit, how it is written, that it may be left out. */
const ENDS =
  /( \([^()]*\)\.| May be left out when there are none\.| Local time, HH:MM\.| ISO date, YYYY-MM-DD\.| One figure, or 24 numbers .*)$/;

/** The label of a field, by its noun and name; its name in words where nobody wrote a label. */
export function labelOf(noun: string, name: string): string {
  return LABELS[`${noun}.${name}`] ?? LABELS[name] ?? sentence(name.replace(/[A-Z]/g, ' $&').toLowerCase());
}

/**
 * The description of a field as a hint for whoever fills it in.
 *
 * @param description   as the facility file's schema publishes it
 * @param label         said already
 * @returns             a sentence; empty where it says no more than the label
 */
export function aboutOf(description: string, label: string): string {
  const [first = '', ...rest] = description.split(': ');
  const types = first.replace(/ \([^)]*\)/g, '').split(', ');
  const isOfTypes = rest.length > 0 && types.every((type) => (EQUIPMENT_TYPES as readonly string[]).includes(type));
  const bare = (isOfTypes ? rest.join(': ') : description).replace(ENDS, '').replace(/^Keys? of (the|an?) /i, 'The ');
  const plain = bare.replace(/^(Name of [a-z ]+|What it is)\.$/, '').replace(/\.$/, '');
  return plain.toLowerCase() === label.toLowerCase() || plain === '' ? '' : `${sentence(plain)}.`;
}

/** A word of a fixed set as people read it. */
export function optionName(value: string): string {
  return NAMES[value] ?? value.replaceAll('-', ' ');
}

/** What one member of a list is called. */
export function oneOf(list: string): string {
  return ONES[list] ?? 'line';
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
