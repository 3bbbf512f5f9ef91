import 'server-only';
import type { Words } from './entry-words';

/** How an alarm ended that did not return to normal. */
const ALARM_ENDS: Readonly<Record<string, string>> = {
  'definition-changed': 'ended: what it watches was changed, and it began anew',
  retired: 'ended: it was retired',
};

/** Why a further step of calls was taken. */
const ALARM_CALLS: Readonly<Record<string, string>> = {
  lead: 'nobody had acknowledged it',
  'nobody-on': 'nobody was on',
  'no-account': 'nobody who was to answer has an account',
  late: 'nothing that came since says that it is over',
};

/** Entries about alarms. */
export const ALARM_WORDS: Readonly<Record<string, Words>> = {
  'alarm-raised': {
    title: 'alarm raised',
    tell: ({ name, has }) =>
      has('by') ? `Called for help: ${name('alarm')}` : `The alarm ${name('alarm')} was raised`,
  },
  'alarm-returned': {
    title: 'alarm returned to normal, or ended',
    tell: ({ text, name, has }) =>
      has('by')
        ? `Said that it is right again, of the alarm ${name('alarm')}: ${text('note')}`
        : `The alarm ${name('alarm')} ${has('why') ? (ALARM_ENDS[text('why')] ?? 'ended') : 'returned to normal'}`,
  },
  'alarm-escalated': {
    title: 'next people called',
    tell: ({ text, name, has }) =>
      `${has('repeated') ? `The last step of the calls was repeated, ${text('step')} in all,` : `Step ${text('step')} of the calls was taken`} for the alarm ${name('alarm')}, ${text('told')} people in all: ${ALARM_CALLS[text('why')] ?? text('why')}`,
  },
  'alarm-acknowledged': {
    title: 'alarm acknowledged',
    tell: ({ text, name, has }) => `Acknowledged the alarm ${name('alarm')}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'alarm-acknowledged-too': {
    title: 'alarm acknowledged by a second person',
    tell: ({ text, name, has }) =>
      `Acknowledged the alarm ${name('alarm')} as well, which somebody had before${has('note') ? `: ${text('note')}` : ''}`,
  },
  'alarm-noted': {
    title: 'note on an alarm',
    tell: ({ text, name }) => `Noted on the alarm ${name('alarm')}: ${text('note')}`,
  },
};
