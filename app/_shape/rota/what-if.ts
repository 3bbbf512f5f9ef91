import { z } from 'zod';
import { type Day, DAYS } from '#core/facility/site';
import type { Facility } from '#core/facility/facility';
import type { WhatIf } from '#core/review/people/what-if';
import { type Typed, WHAT_IF_FIELDS, type WhatIfField } from '#core/review/people/what-if-fields';
import { sitePlace } from '../reviews/case-place';

/** Days on which something that is asked about happens. */
const DAY_CHOICES: Record<string, readonly Day[]> = {
  all: DAYS,
  weekdays: DAYS.slice(0, 5),
  weekend: DAYS.slice(5),
};

/** Longest text that a field takes. */
const LONGEST = 200;
/** Longest way, min: a day. */
const LONGEST_WAY_MIN = 1440;

const typed = z.string().max(LONGEST).optional().catch(undefined);
const fields = Object.fromEntries(WHAT_IF_FIELDS.map((name) => [name, typed])) as Record<WhatIfField, typeof typed>;

/** A site, and a question about its people: what was left empty is not asked. */
export const whatIfAsked = sitePlace
  .extend({ ...fields, column: z.enum(['claimed', 'tested']).catch('claimed') })
  .transform(({ site, column, ...rest }) => ({ site, column, asked: filled(rest) }));

function filled(given: Typed): Typed {
  return Object.fromEntries(Object.entries(given).filter(([, text]) => text !== undefined && text !== ''));
}

/** A question as it was understood, and by field what is wrong with it. */
export interface ReadWhatIf {
  what: WhatIf;
  wrong: Partial<Record<WhatIfField, string>>;
}

const isTime = (text: string) => /^([01]\d|2[0-3]):[0-5]\d$/.test(text);

/** Reads a question about the people of a site. A part with something wrong in it is not asked; the others are. */
export function readWhatIf(given: Typed, { people, shifts }: Pick<Facility, 'people' | 'shifts'>): ReadWhatIf {
  const wrong: ReadWhatIf['wrong'] = {};
  const time = (field: WhatIfField): string => {
    const text = given[field] ?? '';
    if (!isTime(text)) wrong[field] = 'a time such as 02:00';
    return text;
  };
  const minutes = (field: WhatIfField): number => {
    const text = given[field]?.trim() ?? '';
    const value = Number(text);
    const isGood = text !== '' && Number.isFinite(value) && value >= 0 && value <= LONGEST_WAY_MIN;
    if (!isGood) wrong[field] = `minutes, 0 to ${LONGEST_WAY_MIN}`;
    return value;
  };
  const known = (field: WhatIfField, keys: readonly string[]): string => {
    const key = given[field] ?? '';
    if (!keys.includes(key)) wrong[field] = 'one of the list';
    return key;
  };
  const days = (field: WhatIfField) => DAY_CHOICES[given[field] ?? 'all'] ?? DAYS;
  const what: WhatIf = {};
  if (given.check) what.check = { at: time('check'), days: days('checkDays') };
  if (given.shift)
    what.shift = {
      key: known(
        'shift',
        shifts.map(({ key }) => key),
      ),
      from: time('shiftFrom'),
      to: time('shiftTo'),
    };
  if (given.person)
    what.way = {
      person: known(
        'person',
        people.map(({ key }) => key),
      ),
      travelMin: minutes('way'),
    };
  if (given.more)
    what.more = {
      kind: given.more === 'on-site' ? 'on-site' : 'on-call',
      days: days('moreDays'),
      from: time('moreFrom'),
      to: time('moreTo'),
      travelMin: given.more === 'on-site' ? 0 : minutes('moreWay'),
    };
  return { what: withoutWrong(what, wrong), wrong };
}

/** The parts of a question that nothing is wrong with. */
function withoutWrong(what: WhatIf, wrong: ReadWhatIf['wrong']): WhatIf {
  const has = (...names: WhatIfField[]) => names.some((name) => wrong[name] !== undefined);
  return {
    ...(what.check && !has('check') ? { check: what.check } : {}),
    ...(what.shift && !has('shift', 'shiftFrom', 'shiftTo') ? { shift: what.shift } : {}),
    ...(what.way && !has('person', 'way') ? { way: what.way } : {}),
    ...(what.more && !has('moreFrom', 'moreTo', 'moreWay') ? { more: what.more } : {}),
  };
}
