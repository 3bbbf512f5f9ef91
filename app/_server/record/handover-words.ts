import 'server-only';
import type { Words } from './entry-words';

/** What is said when a site changes hands, of animals under watch, and of others at work. */
export const HANDOVER_WORDS: Readonly<Record<string, Words>> = {
  'handover-given': {
    title: 'site handed over',
    tell: ({ text, has }) =>
      `Handed the site over as it stood, ${text('abnormal')} out of order, digest ${text('digest')}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'handover-taken': {
    title: 'site taken over',
    tell: ({ text, has }) =>
      `Read back and took the site over${text('how') === 'password' ? ', on the device of whoever gave it' : ''}, digest ${text('digest')}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'animals-watched': {
    title: 'animals under watch',
    tell: ({ text, name }) =>
      `Put under watch in ${name('system')} until ${text('until')}: ${text('what')}, because ${text('why')}`,
  },
  'animals-unwatched': {
    title: 'watch of animals over',
    tell: ({ text, name }) => `Ended the watch of ${text('what')} in ${name('system')}: ${text('note')}`,
  },
  'notice-added': {
    title: 'notice of work by others',
    tell: ({ text }) => `Gave notice of ${text('what')}, ${text('from')} to ${text('until')}: ${text('todo')}`,
  },
  'notice-ended': {
    title: 'work by others over',
    tell: ({ text, has }) =>
      `Said that ${text('what')} is over before its time${has('note') ? `: ${text('note')}` : ''}`,
  },
};
