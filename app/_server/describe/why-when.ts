import 'server-only';
import type { Field } from '#core/forms/field';

/** Why and when something was done, which stands in the record. */
export const WHY_WHEN: readonly Field[] = [
  {
    name: 'why',
    label: 'Why',
    about: 'It stands in the record for good: name no persons.',
    optional: false,
    first: true,
    kind: 'text',
    long: true,
  },
  { name: 'on', label: 'On which day', about: '', optional: false, first: true, kind: 'date' },
];
