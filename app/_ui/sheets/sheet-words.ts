import type { Check } from '#core/rounds/check';
import type { Frequency } from '#core/rounds/frequency';
import type { Signer } from '#core/rounds/round-sheet';

/** What each kind of line asks for. */
export const KIND_WORDS: Record<Check['kind'], string> = {
  number: 'a number',
  figure: 'a number in a unit of its own',
  'yes-no': 'as usual or not',
  choice: 'one of a few words',
  text: 'a sentence',
  photo: 'photos',
  'head-count': 'a head count',
  used: 'what was used, litres',
  doses: 'doses given',
  'water-test': 'a water test',
  test: 'a test of a safeguard',
  calibration: 'a calibration',
};

/** When a sheet that comes round so often is late, unless it says so itself. */
export const GRACE_WORDS: Record<Frequency, string> = {
  shift: 'late after 2 hours',
  day: 'late at the end of the shift',
  week: 'late after 1 day',
  month: 'late after 5 days',
  quarter: 'late after 14 days',
  year: 'late after 30 days',
};

export const SIGNER_WORDS: Record<Signer, string> = {
  aquarist: 'an aquarist',
  lead: 'a lead',
  manager: 'a manager',
};
