import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { ChangeBrokerForm } from './broker-forms';
import { ConnectionMark } from './connection-mark';
import { PAYLOAD_WORDS } from './payload-words';
import type { BrokerView, NodeView, SourceActions, SourcesView, SourceView, TopicView } from './sources-view';
import { EndTopicForm, TopicForm } from './topic-form';

interface BrokerSectionProps {
  page: SourcesView;
  source: Pick<SourceView, 'id' | 'name'>;
  broker: BrokerView;
  actions: SourceActions;
}

/** One broker: how the connection stands, what is listened to and what came. */
export function BrokerSection({ page: { site, sensors }, source, broker, actions }: BrokerSectionProps) {
  const { topics, nodes } = broker;
  return (
    <Section id={`broker-${source.id}`} title={source.name} note={broker.address} wide>
      <ConnectionMark broker={broker} zone={site.zone} />
      <Counts broker={broker} zone={site.zone} />
      {topics.length === 0 ? (
        <p>Nothing is listened to there yet: say which topics below.</p>
      ) : (
        <Ledger
          caption="What is listened to"
          columns={topicColumns(site.key, actions)}
          rows={topics}
          keyOf={({ id }) => id}
        />
      )}
      {nodes.length > 0 ? (
        <Ledger caption="Sparkplug nodes" columns={nodeColumns(site.zone)} rows={nodes} keyOf={({ name }) => name} />
      ) : null}
      <Fold title="Listen to something more" open={topics.length === 0}>
        <TopicForm site={site.key} source={source.id} sensors={sensors} add={actions.addTopic} />
      </Fold>
      <Fold title="Change address, user or password">
        <ChangeBrokerForm site={site.key} source={source.id} broker={broker} change={actions.changeBroker} />
      </Fold>
    </Section>
  );
}

function Counts({ broker: { messageAt, counts }, zone }: { broker: BrokerView; zone: string }) {
  const { messages, stored, refused, retained } = counts;
  if (messageAt === null) return <p>Nothing has come yet.</p>;
  return (
    <p>
      Last message {instantSaid(messageAt, zone)}. Of {messages} so far: {stored} readings stored, {refused} refused
      {retained > 0
        ? `, ${retained} not taken because the broker had kept them and nobody can say from when they are`
        : ''}
      .
    </p>
  );
}

function topicColumns(site: string, { endTopic }: SourceActions): Column<TopicView>[] {
  return [
    { id: 'topic', head: 'Topic', cell: ({ topic }) => <code>{topic}</code> },
    { id: 'payload', head: 'What comes there', cell: readAs },
    { id: 'unit', head: 'Unit', cell: ({ unit }) => unit ?? '–' },
    { id: 'end', head: 'Give up', cell: ({ id }) => <EndTopicForm site={site} topic={id} action={endTopic} /> },
  ];
}

function readAs({ payload, field, timeField }: TopicView): string {
  const where = field === null ? '' : `: ${field}${timeField === null ? '' : `, its time in ${timeField}`}`;
  return `${PAYLOAD_WORDS[payload]}${where}`;
}

/** How a node stands, in words. */
const PHASES: Readonly<Record<string, string>> = {
  born: 'heard',
  stale: 'gone, or out of sequence: nothing is taken until it is born again',
  unborn: 'not understood until it is born again',
};

function nodeColumns(zone: string): Column<NodeView>[] {
  return [
    { id: 'name', head: 'Node', cell: ({ name }) => name },
    { id: 'phase', head: 'How it stands', cell: ({ phase }) => PHASES[phase] ?? phase },
    { id: 'since', head: 'Since', cell: ({ since }) => instantSaid(since, zone) },
    { id: 'gaps', head: 'Gaps', figure: true, cell: ({ gaps }) => gaps },
    { id: 'held', head: 'Values held back', figure: true, cell: ({ heldBack }) => heldBack },
  ];
}
