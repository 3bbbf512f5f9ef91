import { instantSaid } from '../words/instant';
import type { MachineView } from './machine-view';

const PART_WORDS = {
  ready: 'has a place',
  'no part for next month':
    'has no place: readings of next month could not be stored. A worker makes one each day; see its log',
  unknown: 'is not known of',
} as const;

/** How it stands with the readings: room for those of next month, hours and days that are not rolled up, and how far back they are kept. */
export function readingFacts({ nextPart, rollUp, keptFrom }: MachineView['readings']) {
  const { waiting, oldest } = rollUp;
  const since = oldest === null ? '' : `, the oldest over since ${instantSaid(oldest, 'UTC')}`;
  return [
    { name: 'Next month', value: PART_WORDS[nextPart], isAbnormal: nextPart !== 'ready' },
    {
      name: 'To be rolled up',
      value: waiting === 0 ? 'nothing that is late' : `${waiting} hours and days${since}`,
      isAbnormal: waiting > 0,
    },
    {
      name: 'Single readings',
      value: keptFrom === null ? 'all are kept' : `kept from ${instantSaid(keptFrom, 'UTC')} on`,
    },
  ];
}
