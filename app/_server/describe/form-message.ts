import 'server-only';
import { fieldWords } from '../facility/value-words';

/** What the shapes say of a list in which nothing is chosen. */
const NONE_CHOSEN = /^must have at least 1 member, found a list of 0$/;
/** What the core says of two figures in the wrong order, by the names and in the units of the file. */
const NOT_LESS = /^must be less than (\w+); found .*$/;

/**
 * What is wrong with a field as its form says it: another field by its words, and no figure again that stands in the form
 * in whatever units the person reads.
 *
 * @param field   name of the field in the file, with which a message may begin: the form says its label instead
 */
export function formMessage(message: string, field = ''): string {
  const bare = field !== '' && message.startsWith(`${field} `) ? message.slice(field.length + 1) : message;
  return bare
    .replace(NONE_CHOSEN, 'must be at least one')
    .replace(NOT_LESS, (_all, other: string) => `must be less than “${fieldWords(other)}”`);
}
