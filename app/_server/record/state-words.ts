import 'server-only';
import type { Words } from './entry-words';

/** What happens to an operating state, in words. */
export const STATE_WORDS: Readonly<Record<string, Words>> = {
  'state-begun': {
    title: 'state begun',
    tell: ({ text, name, has }) =>
      `Put ${name('system')} into ${text('state').replaceAll('-', ' ')} until ${text('until')}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'state-put-off': {
    title: 'end of a state put off',
    tell: ({ text, name }) =>
      `Put off the end of ${text('state').replaceAll('-', ' ')} in ${name('system')} from ${text('was')} to ${text('until')}: ${text('note')}`,
  },
  'state-ended': {
    title: 'state ended',
    tell: ({ text, name, has }) =>
      `Ended ${text('state').replaceAll('-', ' ')} in ${name('system')}, which was to last until ${text('until')}${has('note') ? `. Seen: ${text('note')}` : ''}`,
  },
};
