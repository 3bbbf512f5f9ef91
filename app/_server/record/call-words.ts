import 'server-only';
import type { Words } from './entry-words';

/** Entries about the ways to people. */
export const CALL_WORDS: Readonly<Record<string, Words>> = {
  'test-call-made': {
    title: 'test call made',
    tell: ({ name }) => `Called ${name('account')} for a test of the way of the alarms`,
  },
  'test-call-answered': {
    title: 'test call answered',
    tell: ({ text, has }) => `Got the test call${has('channel') ? ` by ${text('channel')}` : ''}`,
  },
  'webhook-set': {
    title: 'webhook of the calls set',
    tell: ({ text }) => `Had the calls of the site posted to ${text('host')} as well`,
  },
  'webhook-ended': {
    title: 'webhook of the calls removed',
    tell: () => 'Had the calls of the site posted nowhere any more',
  },
};
