import type { FormAction } from '../form/answer';

/** A source of readings. Instants are UTC, ISO. */
export interface SourceView {
  id: string;
  name: string;
  gateway: string | null;
  by: string;
  createdAt: string;
  endedAt: string | null;
  usedAt: string | null;
  isBroker: boolean;
  broker: BrokerView | null;
}

/** What is subscribed to at a broker. */
export interface TopicView {
  id: string;
  topic: string;
  payload: 'number' | 'field' | 'senml' | 'sparkplug';
  field: string | null;
  timeField: string | null;
  unit: string | null;
}

/** An edge node of Sparkplug. */
export interface NodeView {
  name: string;
  /** unborn, born or stale. */
  phase: string;
  since: string;
  gaps: number;
  heldBack: number;
}

/** A broker, and how the connection to it stands. Instants are UTC, ISO. */
export interface BrokerView {
  address: string;
  username: string | null;
  hasPassword: boolean;
  hasAuthority: boolean;
  asksRebirth: boolean;
  isEncrypted: boolean;
  topics: TopicView[];
  connected: { since: string; version: '3.1.1' | '5' } | null;
  isHeld: boolean;
  messageAt: string | null;
  failed: { at: string; why: string } | null;
  counts: { messages: number; stored: number; refused: number; retained: number };
  nodes: NodeView[];
}

/** A sensor that a name can be said to be of. */
export interface SensorChoice {
  id: string;
  /** What is always understood: the keys of system and sensor. */
  path: string;
  name: string;
  systemName: string;
  quantity: string;
}

/** A name that came and that no sensor has. */
export interface UnknownView {
  name: string;
  seenAt: string;
  unit: string | null;
  value: number | null;
}

/** Who may send readings of a site. */
export interface SourcesView {
  site: { key: string; name: string; zone: string };
  /** Where a source with a token sends to. */
  address: string;
  sources: SourceView[];
  gateways: { key: string; name: string }[];
  sensors: SensorChoice[];
  aliases: { name: string; sensor: string }[];
  unknown: UnknownView[];
}

/** What is shown once, when a source was made. */
export interface MadeView {
  name: string;
  token: string;
  address: string;
  example: string | null;
}

/** What can be done on the page. */
export interface SourceActions {
  make: FormAction<MadeView>;
  end: FormAction<{ source: string }>;
  makeBroker: FormAction<{ source: string }>;
  changeBroker: FormAction<{ source: string }>;
  addTopic: FormAction<{ topic: string }>;
  endTopic: FormAction<{ topic: string }>;
  name: FormAction<{ name: string }>;
  unname: FormAction<{ name: string }>;
}
