/**
 * What is known of an edge node of Eclipse Sparkplug by the messages that came from it (specification 3.0, chapters 5 and 6):
 * it is born, speaks in sequence, and dies. What it says before it was born, or once its sequence had a gap, is held back: its
 * aliases may mean something else by then, and a value of another sensor would be worse than none.
 */
import type { Metric, SparkplugPayload } from './metric';
import { readingOf } from './metric';
import type { SparkplugKind } from './topic';

/** Not heard of since the connection began; born and in sequence; dead, or with a gap. */
export const NODE_PHASES = ['unborn', 'born', 'stale'] as const;
export type NodePhase = (typeof NODE_PHASES)[number];

interface Birth {
  /** Without the device. */
  name: string;
  device: string | null;
  datatype: number | undefined;
}

/** A node as it stands. */
export interface SparkplugNode {
  phase: NodePhase;
  /** What its birth said that its death will say too; null: it said nothing. */
  bdSeq: number | null;
  /** Of the last message. */
  seq: number;
  /** What births said, by alias, and by device and name. */
  aliases: ReadonlyMap<string, Birth>;
  births: ReadonlyMap<string, Birth>;
  /** Devices that are born. */
  devices: ReadonlySet<string>;
}

/** A value out of a message, of a sensor called `device/metric` or `metric`. */
export interface NodeReading {
  name: string;
  /** Absent: the message does not say. */
  atMs?: number;
  value: number | boolean;
  isHistorical: boolean;
}

/** What follows from a message. */
export interface NodeStep {
  node: SparkplugNode;
  readings: NodeReading[];
  /** Values that were not taken because nobody can say whose they are. */
  heldBack: number;
  /** Names of which nothing more will come, because the node or the device is gone; null: none is. */
  gone: string[] | null;
  hasGap: boolean;
  /** Whether only another birth helps. */
  wantsBirth: boolean;
}

/** A node of which nothing came yet. */
export const UNBORN: SparkplugNode = {
  phase: 'unborn',
  bdSeq: null,
  seq: 0,
  aliases: new Map(),
  births: new Map(),
  devices: new Set(),
};

/** Sequence numbers go from 0 to 255 and begin again (tck-id-payloads-sequence-num-incrementing). */
const SEQ_MODULUS = 256;

/** Holds a node to a message of its own. @param device   null for one of the node itself */
export function stepNode(
  node: SparkplugNode,
  kind: SparkplugKind,
  device: string | null,
  payload: SparkplugPayload,
): NodeStep {
  if (kind === 'NBIRTH') return bear(node, payload);
  if (kind === 'NDEATH') return die(node, payload);
  if (node.phase !== 'born') return hold(node, payload, false);
  if (payload.seq !== (node.seq + 1) % SEQ_MODULUS) return gap(node, payload);
  const next = { ...node, seq: payload.seq };
  switch (kind) {
    case 'DBIRTH':
      return bearDevice(next, device ?? '', payload);
    case 'DDEATH':
      return { ...step(dropDevice(next, device ?? '')), gone: namesOf(next, device) };
    case 'NDATA':
    case 'DDATA':
      if (device !== null && !next.devices.has(device)) return hold(next, payload, true);
      return take(next, device, payload);
  }
}

/** Names that the births of a node said, of one device or of all. */
export function namesOf({ births }: SparkplugNode, device?: string | null): string[] {
  return [...births.values()].filter((one) => device === undefined || one.device === device).map(fullName);
}

function bear(node: SparkplugNode, payload: SparkplugPayload): NodeStep {
  const born: SparkplugNode = { ...UNBORN, phase: 'born', bdSeq: bdSeqOf(payload), seq: payload.seq ?? 0 };
  const known = learn(born, null, payload.metrics);
  // Devices have to be born again after their node: what they said before is of the life before.
  const lost = namesOf(node).filter((name) => !namesOf(known).includes(name));
  const { readings, heldBack } = take(known, null, payload);
  return { ...step(known), readings, heldBack, gone: node.phase === 'born' && lost.length > 0 ? lost : null };
}

function die(node: SparkplugNode, payload: SparkplugPayload): NodeStep {
  // The will of an earlier connection may come after the birth of a later one.
  const said = bdSeqOf(payload);
  const isOfEarlier = node.bdSeq !== null && said !== null && said !== node.bdSeq;
  if (node.phase !== 'born' || isOfEarlier) return step(node);
  return { ...step({ ...node, phase: 'stale', devices: new Set() }), gone: namesOf(node) };
}

function gap(node: SparkplugNode, payload: SparkplugPayload): NodeStep {
  const stale: SparkplugNode = { ...node, phase: 'stale', devices: new Set() };
  return { ...hold(stale, payload, true), gone: namesOf(node), hasGap: true };
}

function hold(node: SparkplugNode, { metrics }: SparkplugPayload, isNew: boolean): NodeStep {
  return { ...step(node), heldBack: metrics.length, wantsBirth: isNew || node.phase !== 'born' };
}

function bearDevice(node: SparkplugNode, device: string, payload: SparkplugPayload): NodeStep {
  const devices = new Set(node.devices).add(device);
  const known = learn({ ...dropDevice(node, device), devices }, device, payload.metrics);
  return take(known, device, payload);
}

function dropDevice(node: SparkplugNode, device: string): SparkplugNode {
  const devices = new Set(node.devices);
  devices.delete(device);
  const kept = <T extends Birth>(births: ReadonlyMap<string, T>) =>
    new Map([...births].filter(([, birth]) => birth.device !== device));
  return { ...node, devices, aliases: kept(node.aliases), births: kept(node.births) };
}

function learn(node: SparkplugNode, device: string | null, metrics: readonly Metric[]): SparkplugNode {
  const [aliases, births] = [new Map(node.aliases), new Map(node.births)];
  for (const { name, alias, datatype } of metrics) {
    if (name === undefined) continue;
    const birth = { name, device, datatype };
    births.set(fullName(birth), birth);
    if (alias !== undefined) aliases.set(alias, birth);
  }
  return { ...node, aliases, births };
}

function take(node: SparkplugNode, device: string | null, { metrics, timestampMs }: SparkplugPayload): NodeStep {
  const readings: NodeReading[] = [];
  let heldBack = 0;
  for (const metric of metrics) {
    const birth = birthOf(node, device, metric);
    if (!birth || birth.device !== device) {
      heldBack += 1;
      continue;
    }
    const value = isOfProtocol(birth) ? null : readingOf(metric, birth.datatype);
    if (value === null) continue;
    const atMs = metric.timestampMs ?? timestampMs;
    const { isHistorical } = metric;
    readings.push({ name: fullName(birth), value, isHistorical, ...(atMs === undefined ? {} : { atMs }) });
  }
  return { ...step(node), readings, heldBack, wantsBirth: heldBack > 0 };
}

function birthOf(node: SparkplugNode, device: string | null, { name, alias }: Metric): Birth | undefined {
  if (name !== undefined) return node.births.get(fullName({ name, device, datatype: undefined }));
  return alias === undefined ? undefined : node.aliases.get(alias);
}

/** What a node says to its hosts of itself, which is no reading. */
function isOfProtocol({ name, device }: Birth): boolean {
  return device === null && (name === 'bdSeq' || name.startsWith('Node Control/'));
}

function fullName({ name, device }: Birth): string {
  return device === null ? name : `${device}/${name}`;
}

/** What a birth and the death that belongs to it share (tck-id-payloads-ndeath-bdseq). */
function bdSeqOf({ metrics }: SparkplugPayload): number | null {
  const metric = metrics.find(({ name }) => name === 'bdSeq');
  const value = metric && readingOf(metric);
  return typeof value === 'number' ? value : null;
}

function step(node: SparkplugNode): NodeStep {
  return { node, readings: [], heldBack: 0, gone: null, hasGap: false, wantsBirth: false };
}
