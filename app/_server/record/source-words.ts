import 'server-only';
import type { Words } from './entry-words';

/** How entries about what sends readings, and about its names for sensors, are told. */
export const SOURCE_WORDS: Readonly<Record<string, Words>> = {
  'source-made': {
    title: 'source of readings made',
    tell: ({ name, has }) => `Let ${name('source')} send readings${has('gateway') ? ` for ${name('gateway')}` : ''}`,
  },
  'source-ended': {
    title: 'source of readings ended',
    tell: ({ name }) => `Ended ${name('source')} as a source of readings`,
  },
  'broker-made': {
    title: 'broker subscribed to',
    tell: ({ name, has }) =>
      `Had readings come from ${name('source')}${has('gateway') ? `, to which ${name('gateway')} sends` : ''}`,
  },
  'broker-changed': {
    title: 'broker changed',
    tell: ({ name }) => `Changed where ${name('source')} is, or who Holdfast is there`,
  },
  'topic-added': {
    title: 'topic subscribed to',
    tell: ({ name, text }) => `Subscribed to “${text('topic')}” at ${name('source')}`,
  },
  'topic-ended': {
    title: 'topic given up',
    tell: ({ name, text }) => `Gave up “${text('topic')}” at ${name('source')}`,
  },
  'sensor-named': {
    title: 'name of a sensor given',
    tell: ({ text, name }) => `Said that sources call ${name('sensor')} “${text('name')}”`,
  },
  'sensor-unnamed': {
    title: 'name of a sensor taken away',
    tell: ({ text, name }) => `Took the name “${text('name')}” of ${name('sensor')} away`,
  },
};
