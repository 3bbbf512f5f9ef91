import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Metric, MetricValue } from '#core/readings/sparkplug/metric';
import { readingOf } from '#core/readings/sparkplug/metric';
import { type NodeStep, type SparkplugNode, stepNode, UNBORN } from '#core/readings/sparkplug/node';
import { commandTopic, type SparkplugKind, sparkplugTopic } from '#core/readings/sparkplug/topic';

const metric = (value: MetricValue, more: Partial<Metric> = {}): Metric => ({
  isHistorical: false,
  isNull: false,
  value,
  ...more,
});
const double = (value: number, more: Partial<Metric> = {}) => metric({ as: 'double', value }, more);
const bdSeq = (value: number) => metric({ as: 'long', value: BigInt(value) }, { name: 'bdSeq', datatype: 4 });

/** A message as it is told here: its kind, its sequence, its metrics; of the device when it is a device's. */
type Said = [SparkplugKind, number | undefined, Metric[]];

/** Holds a node to messages one after another. @returns what followed from each */
function follow(said: readonly Said[], from: SparkplugNode = UNBORN): NodeStep[] {
  let node = from;
  return said.map(([kind, seq, metrics]) => {
    const step = stepNode(node, kind, kind.startsWith('D') ? 'pump' : null, {
      metrics,
      ...(seq === undefined ? {} : { seq }),
    });
    node = step.node;
    return step;
  });
}

const BIRTH: Said = ['NBIRTH', 0, [bdSeq(7), double(25, { name: 'temperature', alias: '1' })]];
const PUMP: Said = ['DBIRTH', 1, [double(90, { name: 'watts', alias: '2' })]];
const last = (said: readonly Said[]) => follow(said).at(-1);
const value = (n: number, alias: string) => double(n, { alias });

// Eclipse Sparkplug 3.0: a line is a statement by its id there without `tck-id-` (`…` stands for
// `operational-behavior-edge-node-termination-host-action-`), or the section that lists why a host asks for a birth.
describe('a node', () => {
  test.each<[string, Said[], Partial<{ phase: string; names: string[]; heldBack: number; gone: string[] | null }>]>([
    ['nbirth: is born with all its metrics', [BIRTH], { phase: 'born', names: ['temperature'], gone: null }],
    [
      'payloads-alias-data-cmd-requirement: speaks by alias',
      [BIRTH, ['NDATA', 1, [value(26, '1')]]],
      { names: ['temperature'] },
    ],
    ['dbirth: has devices that are born', [BIRTH, PUMP], { names: ['pump/watts'] }],
    ['ddata: whose devices speak', [BIRTH, PUMP, ['DDATA', 2, [value(91, '2')]]], { names: ['pump/watts'] }],
    ['5.15 data before a birth are held back', [['NDATA', 1, [value(26, '1')]]], { phase: 'unborn', heldBack: 1 }],
    ['5.15 data of a device before its birth too', [BIRTH, ['DDATA', 1, [value(1, '2')]]], { names: [], heldBack: 1 }],
    ['5.15 an alias of no birth is held back', [BIRTH, ['NDATA', 1, [value(1, '9')]]], { names: [], heldBack: 1 }],
    [
      'payloads-alias-uniqueness: an alias of a device is none of the node',
      [BIRTH, PUMP, ['NDATA', 2, [value(1, '2')]]],
      { names: [], heldBack: 1 },
    ],
    [
      'payloads-sequence-num-incrementing: a gap makes all of it stale',
      [BIRTH, PUMP, ['NDATA', 3, [value(26, '1')]]],
      { phase: 'stale', names: [], gone: ['bdSeq', 'temperature', 'pump/watts'] },
    ],
    [
      'payloads-sequence-num-incrementing: the same number again is a gap',
      [BIRTH, ['NDATA', 0, []]],
      { phase: 'stale' },
    ],
    [
      '…ndeath-node-tags-stale, …ndeath-devices-tags-stale: a death of the same birth',
      [BIRTH, PUMP, ['NDEATH', undefined, [bdSeq(7)]]],
      { phase: 'stale', gone: ['bdSeq', 'temperature', 'pump/watts'] },
    ],
    [
      'payloads-ndeath-bdseq: a death of an earlier birth says nothing',
      [BIRTH, ['NDEATH', undefined, [bdSeq(6)]]],
      { phase: 'born' },
    ],
    ['dies once', [BIRTH, ['NDEATH', undefined, [bdSeq(7)]], ['NDEATH', undefined, [bdSeq(7)]]], { gone: null }],
    [
      '…ddeath-devices-tags-stale: a device dies by itself',
      [BIRTH, PUMP, ['DDEATH', 2, []]],
      { phase: 'born', gone: ['pump/watts'] },
    ],
    [
      '…ddeath-devices-offline: and is silent until it is born again',
      [BIRTH, PUMP, ['DDEATH', 2, []], ['DDATA', 3, [value(1, '2')]]],
      { names: [], heldBack: 1 },
    ],
    [
      'is born again after a gap',
      [BIRTH, ['NDATA', 9, []], ['NBIRTH', 0, [bdSeq(8), double(25, { name: 'temperature', alias: '5' })]]],
      { phase: 'born', names: ['temperature'] },
    ],
  ])('%s', (_, said, expected) => {
    const step = last(said);
    expect({
      phase: step?.node.phase,
      names: step?.readings.map(({ name }) => name),
      heldBack: step?.heldBack,
      gone: step?.gone,
    }).toMatchObject(expected);
  });

  test('an alias means what the latest birth said, and nothing of the one before', () => {
    const again: Said = ['NBIRTH', 0, [bdSeq(8), double(8, { name: 'ph', alias: '1' })]];
    const steps = follow([BIRTH, again, ['NDATA', 1, [value(8.1, '1')]]]);
    expect(steps[1]?.gone).toEqual(['temperature']);
    expect(steps[2]?.readings).toMatchObject([{ name: 'ph', value: 8.1 }]);
  });

  test('payloads-sequence-num-incrementing: its sequence goes to 255 and begins again at 0; whatever else comes is a gap', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 600 }), fc.integer({ min: 0, max: 255 }), (count, other) => {
        const said = Array.from({ length: count }, (_, i): Said => ['NDATA', (i + 1) % 256, [value(i, '1')]]);
        const steps = follow([BIRTH, ...said]);
        const next = (count + 1) % 256;
        expect(steps.every(({ hasGap }) => !hasGap)).toBe(true);
        expect(steps.flatMap(({ readings }) => readings)).toHaveLength(count + 1);
        const node = steps.at(-1)?.node ?? UNBORN;
        expect(follow([['NDATA', other, []]], node)[0]?.hasGap).toBe(other !== next);
      }),
      { numRuns: 60 },
    );
  });

  test('whatever comes in whatever order, a value is taken only while node and device are born, each is counted', () => {
    const kind = fc.constantFrom<SparkplugKind>('NBIRTH', 'NDATA', 'NDEATH', 'DBIRTH', 'DDATA', 'DDEATH');
    const one = fc.tuple(kind, fc.boolean(), fc.constantFrom('1', '2', '3'));
    fc.assert(
      fc.property(fc.array(one, { maxLength: 40 }), (script) => {
        let node = UNBORN;
        // What a reader of the specification keeps in mind: alive, and which device is.
        let [isBorn, isDeviceBorn] = [false, false];
        for (const [said, inSequence, alias] of script) {
          const isDevice = said.startsWith('D');
          const seq = said === 'NBIRTH' ? 0 : (node.seq + (inSequence ? 1 : 3)) % 256;
          const births = [double(1, { name: isDevice ? 'watts' : 'ph', alias: isDevice ? '2' : '1' })];
          const metrics = said.endsWith('BIRTH') ? births : said === 'NDEATH' ? [] : [value(1, alias)];
          const step = stepNode(node, said, isDevice ? 'pump' : null, { seq, metrics });
          const broken = isBorn && said !== 'NBIRTH' && said !== 'NDEATH' && !inSequence;
          if (said === 'NBIRTH') [isBorn, isDeviceBorn] = [true, false];
          else if (said === 'NDEATH' || broken) [isBorn, isDeviceBorn] = [false, false];
          else if (isBorn && isDevice) isDeviceBorn = said === 'DBIRTH' || (said === 'DDATA' && isDeviceBorn);
          node = step.node;
          expect([node.phase === 'born', node.devices.size > 0]).toEqual([isBorn, isDeviceBorn]);
          if (!isBorn || (said === 'DDATA' && !isDeviceBorn)) expect(step.readings).toEqual([]);
          if (said.endsWith('DATA')) expect(step.readings.length + step.heldBack).toBe(1);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('a value of the past keeps its time and says so; one without a time has that of its message', () => {
    const { readings = [] } = stepNode(follow([BIRTH])[0]?.node ?? UNBORN, 'NDATA', null, {
      seq: 1,
      timestampMs: 2000,
      metrics: [double(1, { alias: '1', timestampMs: 1000, isHistorical: true }), value(2, '1')],
    });
    expect(readings).toEqual([
      { name: 'temperature', value: 1, atMs: 1000, isHistorical: true },
      { name: 'temperature', value: 2, atMs: 2000, isHistorical: false },
    ]);
  });
});

describe('a value', () => {
  // Sparkplug 3.0, section 6.4.16 (from memory): signed numbers are sent in the unsigned fields as two's complement.
  test.each<[string, MetricValue, number | undefined, number | boolean | null]>([
    ['Int8', { as: 'int', value: 0xff }, 1, -1],
    ['Int16', { as: 'int', value: 0xffff }, 2, -1],
    ['Int32', { as: 'int', value: 0xfffffffe }, 3, -2],
    ['UInt32', { as: 'int', value: 0xfffffffe }, 7, 0xfffffffe],
    ['Int64', { as: 'long', value: 2n ** 64n - 5n }, 4, -5],
    ['without a type', { as: 'long', value: 12n }, undefined, 12],
    ['Float', { as: 'float', value: Math.fround(25.3) }, 9, 25.3],
    ['Float that is no decimal', { as: 'float', value: Math.fround(1 / 3) }, 9, 0.33333334],
    ['Double', { as: 'double', value: 25.299999 }, 10, 25.299999],
    ['not a number', { as: 'float', value: Number.NaN }, 9, null],
    ['endless', { as: 'double', value: Number.POSITIVE_INFINITY }, 10, null],
    ['Boolean', { as: 'boolean', value: true }, 11, true],
    ['String', { as: 'other' }, 12, null],
  ])('%s', (_, said, datatype, expected) => {
    expect(readingOf(metric(said), datatype)).toBe(expected);
  });

  test('that is null is no reading', () => {
    expect(readingOf(double(3, { isNull: true }))).toBeNull();
  });
});

describe('a topic', () => {
  test.each([
    ['spBv1.0/hall/NBIRTH/gw', { kind: 'NBIRTH', group: 'hall', node: 'gw', device: null }],
    ['spBv1.0/hall/DDATA/gw/pump', { kind: 'DDATA', group: 'hall', node: 'gw', device: 'pump' }],
    ['spBv1.0/hall/NBIRTH/gw/pump', null],
    ['spBv1.0/hall/DDATA/gw', null],
    ['spBv1.0/hall/NCMD/gw', null],
    ['spBv1.0/STATE/host', null],
    ['spAv1.0/hall/NBIRTH/gw', null],
    ['spBv1.0/hall/DDATA/gw/pump/more', null],
  ])('%s', (topic, expected) => {
    expect(sparkplugTopic(topic)).toEqual(expected);
  });

  test('of a request is the node’s own', () => {
    expect(commandTopic('hall', 'gw')).toBe('spBv1.0/hall/NCMD/gw');
  });
});
