import 'server-only';
import { SIGNED_BY_TWO, signingWords } from '#core/states/signing';
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
  'state-looked': {
    title: 'look after a state',
    tell: ({ text, name }) =>
      `Looked after ${text('state').replaceAll('-', ' ')} in ${name('system')}: ${text('note')}`,
  },
  'state-authorised': {
    title: 'treatment let go on',
    tell: ({ text, name, has }) =>
      `Let ${text('state').replaceAll('-', ' ')} in ${name('system')} go on for another day${has('note') ? `: ${text('note')}` : ''}`,
  },
  'state-not-begun': {
    title: 'state not begun',
    tell: ({ text, name }) =>
      `Said that ${text('state').replaceAll('-', ' ')} in ${name('system')} had not begun at ${text('since')}, though it looked so`,
  },
  'state-timed': {
    title: 'state begun by the clock',
    tell: ({ text, name, has }) =>
      `Had ${text('state').replaceAll('-', ' ')} in ${name('system')} begin by the clock: ${has('schedule') ? text('schedule') : `${text('days')} at ${text('at')}`}, for ${text('lastsMin')} min`,
  },
  'state-untimed': {
    title: 'state no longer begun by the clock',
    tell: ({ name }) => `Had a state of ${name('system')} begin by the clock no more`,
  },
  'second-asked': {
    title: 'second signature asked for',
    tell: ({ text, name, has }) => `Did what a second person signs: ${signedSaid(text('what'))}${at(name, has)}`,
  },
  'second-given': {
    title: 'second signature',
    tell: ({ text, name, has }) => `Signed as the second: ${signedSaid(text('what'))}${at(name, has)}. ${text('note')}`,
  },
  'second-objected': {
    title: 'second look found something wrong',
    tell: ({ text, name, has }) =>
      `Did not sign as the second: ${signedSaid(text('what'))}${at(name, has)}. ${text('note')}`,
  },
};

function signedSaid(what: string): string {
  const known = SIGNED_BY_TWO.find((one) => one === what);
  return known ? signingWords(known).title.toLowerCase() : what;
}

function at(name: (field: string) => string, has: (field: string) => boolean): string {
  return has('system') ? `, ${name('system')}` : '';
}
