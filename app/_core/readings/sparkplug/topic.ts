/** Kinds of message of an edge node that are read (Eclipse Sparkplug 3.0, 4.1.2). Commands are for nodes, and STATE is of hosts. */
const KINDS = ['NBIRTH', 'NDATA', 'NDEATH', 'DBIRTH', 'DDATA', 'DDEATH'] as const;
export type SparkplugKind = (typeof KINDS)[number];

/** The namespace of Sparkplug B, with which every topic of it begins. */
const NAMESPACE = 'spBv1.0';

/** Whose a message is. */
export interface SparkplugTopic {
  kind: SparkplugKind;
  group: string;
  node: string;
  /** Null for the node itself. */
  device: string | null;
}

/**
 * Reads `spBv1.0/group/kind/node[/device]`.
 *
 * @returns   null for any other topic
 */
export function sparkplugTopic(topic: string): SparkplugTopic | null {
  const [namespace, group, kind, node, device, ...more] = topic.split('/');
  if (namespace !== NAMESPACE || !group || !node || more.length > 0) return null;
  const known = KINDS.find((one) => one === kind);
  const isOfDevice = known?.startsWith('D') === true;
  if (!known || isOfDevice !== Boolean(device)) return null;
  return { kind: known, group, node, device: device ?? null };
}

/** Where a node is asked to be born again: the one topic that is ever written to. */
export function commandTopic(group: string, node: string): string {
  return `${NAMESPACE}/${group}/NCMD/${node}`;
}
