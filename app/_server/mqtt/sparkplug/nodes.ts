import 'server-only';
import { namesOf, type NodeStep, type SparkplugNode, stepNode, UNBORN } from '#core/readings/sparkplug/node';
import { sparkplugTopic } from '#core/readings/sparkplug/topic';
import { ok, refused } from '#core/result';
import type { NodeNote } from '#data/brokers/nodes';
import type { Message, Read } from '../read-message';
import { decodeSparkplug } from './decode';

/** Edge nodes that one broker may have: whoever sends nonsense fills no memory. */
const MOST_NODES = 500;

/**
 * The edge nodes of Sparkplug that speak by one connection. It begins with none: what was sent while there was no connection
 * is not known, and aliases may mean something else since, so each has to be born first.
 */
export class SparkplugNodes {
  private readonly nodes = new Map<string, SparkplugNode>();
  private notes = new Map<string, NodeNote>();

  /** Takes a message of Sparkplug; of another it says nothing. */
  read({ topic, payload, atMs }: Message): Read {
    const of = sparkplugTopic(topic);
    if (!of) return { records: [], retained: 0, gone: null, wantsBirth: null };
    const name = `${of.group}/${of.node}`;
    const before = this.nodes.get(name) ?? (this.nodes.size < MOST_NODES ? UNBORN : null);
    const said = decodeSparkplug(payload);
    if (!(said.ok && before)) return this.unread(said.ok ? 'is of one node more than are kept' : said.reason, topic);
    const step = stepNode(before, of.kind, of.device, said.value);
    this.nodes.set(name, step.node);
    this.note(name, step);
    return {
      records: step.readings.map(({ name: metric, isHistorical, atMs: ownMs, value }) => {
        const reading = { name: `${name}/${metric}`, atMs: ownMs ?? atMs, value };
        return ok(isHistorical ? { ...reading, isOfPast: true } : reading);
      }),
      retained: 0,
      gone: step.gone?.map((metric) => `${name}/${metric}`) ?? null,
      wantsBirth: step.wantsBirth ? { group: of.group, node: of.node } : null,
    };
  }

  /** Names that nodes which are born have said, without those of devices that are gone. */
  namesThere(): string[] {
    return [...this.nodes].flatMap(([name, one]) =>
      one.phase === 'born' ? namesOf(one).map((metric) => `${name}/${metric}`) : [],
    );
  }

  /** What is to be noted of nodes since this was last asked. */
  takeNotes(): NodeNote[] {
    const notes = [...this.notes.values()];
    this.notes = new Map();
    return notes;
  }

  private note(name: string, { node, hasGap, heldBack }: NodeStep): void {
    const { gaps = 0, heldBack: held = 0 } = this.notes.get(name) ?? {};
    this.notes.set(name, { name, phase: node.phase, gaps: gaps + (hasGap ? 1 : 0), heldBack: held + heldBack });
  }

  private unread(why: string, topic: string): Read {
    return { records: [refused({ field: 'payload', why, name: topic })], retained: 0, gone: null, wantsBirth: null };
  }
}
