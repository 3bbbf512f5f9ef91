import 'server-only';
import type { Words } from './entry-words';

/** What was there when an entry came that was made out of reach. */
const BESIDE: Readonly<Record<string, string>> = {
  entered: 'somebody else had entered the line',
  corrected: 'somebody else had corrected the same entry',
  signed: 'the round was signed',
  unknown: 'what it corrects was not there',
};

/** What may be taken back, in words. */
const TAKEN: Readonly<Record<string, string>> = {
  'second-look': 'a second look at a round',
  'state-look': 'a look after a state',
  'second-signature': 'a second signature',
  'animal-watch-end': 'the end of a watch of animals',
};

/** Entries about rounds. */
export const ROUND_WORDS: Readonly<Record<string, Words>> = {
  'round-begun': {
    title: 'round begun',
    tell: ({ text, name, has }) =>
      text('besides') === 'true'
        ? `Began ${name('slot')} besides the timetable`
        : `Began ${has('sheet') ? `${name('sheet')}, version ${text('version')}` : name('slot')}, due ${text('due')}`,
  },
  'sheet-in-force': {
    title: 'round sheet in force',
    tell: ({ text, name, has }) =>
      `Put version ${text('version')} of the round sheet ${name('sheet')} into force${has('why') ? `: ${text('why')}` : ''}`,
  },
  'sheet-retired': {
    title: 'round sheet retired',
    tell: ({ text, name }) => `Took the round sheet ${name('sheet')} out of force: ${text('why')}`,
  },
  'round-signed': {
    title: 'round signed',
    tell: ({ text, name, has }) =>
      `Signed a round${has('slot') ? ` (${name('slot')})` : ''}: ${text('lines')} lines, ${text('abnormal')} abnormal, ${text('notDone')} not done${has('note') ? `. ${text('note')}` : ''}`,
  },
  'round-signed-second': {
    title: 'round signed by a second person',
    tell: ({ text, name, has }) =>
      `Signed a round as the second${has('slot') ? ` (${name('slot')})` : ''}: ${text('lines')} lines, ${text('abnormal')} abnormal, ${text('notDone')} not done${has('note') ? `. ${text('note')}` : ''}`,
  },
  'round-looked-at': {
    title: 'second look at a round',
    tell: ({ text, name, has }) =>
      `Looked again at a round${has('slot') ? ` (${name('slot')})` : ''}${text('soleKeeper') === 'true' ? ', as the only one who may' : ''}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'look-taken-back': {
    title: 'look taken back',
    tell: ({ text }) => `Took back ${TAKEN[text('what')] ?? 'what was said'}: ${text('reason')}`,
  },
  'round-entry-beside': {
    title: 'entry of a round kept beside another',
    tell: ({ text }) =>
      `Entered ${text('line')} out of reach; it came when ${BESIDE[text('beside')] ?? 'more was there'}`,
  },
  'round-photo': { title: 'photo on a round', tell: () => 'Took a photo of what was entered on a round' },
  'round-corrected': {
    title: 'entry of a round corrected',
    tell: ({ text }) => `Corrected the entry of ${text('line')} on a round: ${text('reason')}`,
  },
};
