import 'server-only';
import type { Said, Words } from './entry-words';

/** What keeps an alarm from calling. */
const SUPPRESSIONS: Readonly<Record<string, string>> = {
  shelved: 'it is shelved',
  'by-design': 'an operating state suppresses it by design',
  'out-of-service': 'it is out of service',
};

/** Why that ended. */
const ENDED: Readonly<Record<string, string>> = {
  time: 'its time was up',
  person: 'somebody ended it',
  'state-over': 'the operating state was over',
  retired: 'the alarm was retired',
};

/** Why an alarm that was acknowledged calls again. */
const RECALLS: Readonly<Record<string, string>> = {
  'not-turned': 'its value has not turned in time',
  'backup-failed': 'the backup in charge fails',
};

const ended = ({ text, has }: Said) =>
  `${ENDED[text('why')] ?? text('why')}${has('reason') ? `: ${text('reason')}` : ''}`;
const because = ({ text, has }: Said) => (has('reason') ? `: ${text('reason')}` : '');

/** Entries about what keeps alarms from calling, and about their calling again. */
export const ALARM_LIFE_WORDS: Readonly<Record<string, Words>> = {
  'alarm-shelved': {
    title: 'alarm shelved',
    tell: (said) => `Shelved the alarm ${said.name('alarm')} until ${said.text('until')}${because(said)}`,
  },
  'alarm-unshelved': {
    title: 'alarm no longer shelved',
    tell: (said) => `The alarm ${said.name('alarm')} is no longer shelved: ${ended(said)}`,
  },
  'alarm-out-of-service': {
    title: 'alarm out of service',
    tell: (said) =>
      `Took the alarm ${said.name('alarm')} out of service until ${said.text('until')}, in the hands of ${said.name('account')}${because(said)}`,
  },
  'alarm-back-in-service': {
    title: 'alarm back in service',
    tell: (said) => `The alarm ${said.name('alarm')} is back in service: ${ended(said)}`,
  },
  'alarm-suppressed-by-design': {
    title: 'alarm suppressed by design',
    tell: ({ text, name }) =>
      `The alarm ${name('alarm')} is suppressed by design in ${text('state').replaceAll('-', ' ')}, until ${text('until')} at the latest`,
  },
  'alarm-no-longer-by-design': {
    title: 'alarm no longer suppressed by design',
    tell: (said) => `The alarm ${said.name('alarm')} is no longer suppressed by design: ${ended(said)}`,
  },
  'alarm-suppressed': {
    title: 'open alarm that calls nobody',
    tell: ({ text, name }) =>
      `The open alarm ${name('alarm')} calls nobody, since ${SUPPRESSIONS[text('suppression')] ?? text('suppression')}`,
  },
  'alarm-unsuppressed': {
    title: 'open alarm that may call again',
    tell: ({ text, name }) =>
      `The open alarm ${name('alarm')} is no longer suppressed: ${ENDED[text('why')] ?? text('why')}`,
  },
  'alarm-raised-again': {
    title: 'latched alarm raised again',
    tell: ({ name }) => `The latched alarm ${name('alarm')} was raised again before anybody reset it`,
  },
  'alarm-recalled': {
    title: 'acknowledged alarm calls again',
    tell: ({ text, name }) => `The alarm ${name('alarm')} calls again: ${RECALLS[text('why')] ?? text('why')}`,
  },
  'alarm-unfolded': {
    title: 'folded alarm calls by itself',
    tell: ({ name }) => `The alarm ${name('alarm')} calls by itself: its first cause no longer does`,
  },
  'alarm-reset': {
    title: 'latched alarm reset',
    tell: ({ text, name, has }) => `Reset the latched alarm ${name('alarm')}${has('note') ? `: ${text('note')}` : ''}`,
  },
  'alarm-reset-refused': {
    title: 'reset of an alarm refused',
    tell: ({ name }) => `Tried to reset the alarm ${name('alarm')} while what it watches held: nothing was changed`,
  },
};
