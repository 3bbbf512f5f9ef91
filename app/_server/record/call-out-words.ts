import 'server-only';
import type { Words } from './entry-words';

/** Entries about people who went in alone, and about the keys they need for it. */
export const CALL_OUT_WORDS: Readonly<Record<string, Words>> = {
  'call-out-begun': {
    title: 'went in alone',
    tell: ({ text, name, has }) =>
      `Went in alone (${text('place')}), to be back by ${text('until')}${has('named') ? `; ${name('named')} may say so as well` : ''}`,
  },
  'call-out-extended': {
    title: 'more time alone',
    tell: ({ text, name }) => `Gave ${name('account')}, who is in alone, until ${text('until')}`,
  },
  'call-out-overdue': {
    title: 'not back from going in alone',
    tell: ({ text, name }) =>
      `Nobody said that ${name('account')} is back: step ${text('step')}, ${text('called') === '0' ? 'nobody could be called' : `called ${text('called')}`}`,
  },
  'call-out-seen-to': {
    title: 'looks after somebody alone',
    tell: ({ name }) => `Looks after ${name('account')}, who went in alone and is not back`,
  },
  'call-out-back': {
    title: 'back from going in alone',
    tell: ({ name, text, has }) =>
      `Said that ${name('account')} is back and safe${has('note') ? `: ${text('note')}` : ''}`,
  },
  'key-handed': {
    title: 'key handed over',
    tell: ({ text, name, has }) =>
      has('holder')
        ? `Gave the key “${text('key')}” to ${name('holder')}`
        : `Put the key “${text('key')}” back: ${text('place')}`,
  },
};
