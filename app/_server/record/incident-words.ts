import 'server-only';
import type { Words } from './entry-words';

/** Entries about incidents. */
export const INCIDENT_WORDS: Readonly<Record<string, Words>> = {
  'incident-opened': {
    title: 'incident opened',
    tell: ({ text, name, has }) =>
      `Opened incident ${text('incident')}, ${has('system') ? name('system') : 'the whole site'}: ${text('title')}`,
  },
  'incident-written': {
    title: 'written in an incident',
    tell: ({ text, has }) =>
      `Wrote in incident ${text('incident')} (${text('what').replaceAll('-', ' ')})${has('supersedes') ? `, in the place of another entry: ${text('reason')}` : ''}`,
  },
  'incident-signed': {
    title: 'incident signed',
    tell: ({ text }) => `Signed incident ${text('incident')} as ${text('as').replaceAll('-', ' ')}`,
  },
};
