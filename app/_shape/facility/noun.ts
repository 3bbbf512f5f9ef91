import { nearestWord } from '#core/facility/nearest-word';
import { z } from 'zod';

/**
 * The shape of one noun of the file. A field it does not know is an error: a typing mistake must not be passed over.
 *
 * @param id     name in the published JSON Schema
 * @param about  what the noun is, for whoever writes the file
 * @param fields its fields
 */
export function noun<S extends z.core.$ZodLooseShape>(id: string, about: string, fields: S) {
  return fieldsOnly(fields).meta({ id, description: about });
}

/** An object with these fields and no others, without a name of its own in the published JSON Schema. */
export function fieldsOnly<S extends z.core.$ZodLooseShape>(fields: S) {
  const known = Object.keys(fields);
  const error: z.core.$ZodErrorMap = (issue) =>
    issue.code === 'unrecognized_keys' ? issue.keys.map((key) => unknownField(key, known)).join('\n') : undefined;
  return z.strictObject(fields, { error });
}

function unknownField(key: string, known: readonly string[]): string {
  const near = nearestWord(key, known);
  return `is not a field here${near ? `. Did you mean ${near}?` : `; the fields are ${known.join(', ')}`}`;
}
