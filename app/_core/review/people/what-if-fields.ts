/** Fields of the question as they stand in the address: what somebody typed, right or wrong. */
export const WHAT_IF_FIELDS = [
  'check',
  'checkDays',
  'shift',
  'shiftFrom',
  'shiftTo',
  'person',
  'way',
  'more',
  'moreDays',
  'moreFrom',
  'moreTo',
  'moreWay',
] as const;
export type WhatIfField = (typeof WHAT_IF_FIELDS)[number];
/** What was typed, by field; what was left empty is not there. */
export type Typed = Partial<Record<WhatIfField, string>>;
