import type { TopicView } from './sources-view';

/** What comes under a topic, as people call it. */
export const PAYLOAD_WORDS: Readonly<Record<TopicView['payload'], string>> = {
  number: 'a number and nothing else',
  field: 'a JSON object that holds the value',
  senml: 'SenML in JSON, which has names of its own',
  sparkplug: 'Sparkplug B',
};
