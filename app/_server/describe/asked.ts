import 'server-only';
import type { Field } from '#core/forms/field';
import type { SystemReview } from '#core/review/result';

/** Why a review asks for a figure, by its path in the facility. */
export type Asked = ReadonlyMap<string, string>;

/** What reviews ask for: first the figure that would narrow an answer most, then those whose range changes a verdict. */
export function askedBy(reviews: readonly Pick<SystemReview, 'inputs' | 'askNext'>[]): Asked {
  const asked = new Map<string, string>();
  for (const { inputs, askNext } of reviews) {
    for (const { path, changes } of inputs) {
      if (path === askNext)
        asked.set(
          path,
          'The review asks for this first: the gravest case is unsure as long as it is not known better.',
        );
      else if (changes.length > 0 && !asked.has(path))
        asked.set(path, 'The review is unsure as long as this is not known better.');
    }
  }
  return asked;
}

/** Says beside each field why the review asks for it. @param at path of the thing, ending in a slash */
export function withAsked(fields: readonly Field[], asked: Asked, at: string): Field[] {
  return fields.map((field) => {
    const path = `${at}${field.name}`;
    const why = asked.get(path);
    const told = why === undefined ? field : { ...field, asked: why };
    if (told.kind !== 'group') return told;
    const inner = withAsked(told.fields, asked, `${path}/`);
    const isWithin = inner.some((one) => one.asked !== undefined);
    return { ...told, fields: inner, first: told.first || isWithin };
  });
}
