import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SensorQuantity } from '#core/facility/system';
import { proposeLayout } from '#core/readings/file/propose';
import { questionsOf, settled } from '#core/readings/file/questions';
import { rowTurner } from '#core/readings/file/turn-row';
import { readLoggerFile, rowsBelowHead } from '#server/readings/file/read-logger-file';
import { anyDialect, anyRows, type Dialect, type MadeRow, written } from '../../_support/any-dialect';

const SENSORS: { id: string; quantity: SensorQuantity }[] = [
  { id: 'water', quantity: 'temperature' },
  { id: 'acid', quantity: 'ph' },
];
const quantityOf = (id: string) => SENSORS.find((one) => one.id === id)?.quantity;
const LATEST = Date.parse('2026-01-01T00:00:00Z');

/** What a file of a dialect comes back as, where only its zone, its units and the order of its dates are said. */
async function readBack(dialect: Dialect, rows: readonly MadeRow[]): Promise<MadeRow[]> {
  const read = await readLoggerFile(written(dialect, rows), {});
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  const { structure, facts, encoding, text } = read.value;
  const likely = proposeLayout(structure, facts, encoding, SENSORS);
  const time = likely.time.as === 'text' ? { ...likely.time, order: dialect.order } : likely.time;
  const columns = likely.columns.map((one) => ({
    ...one,
    unit: one.sensor === 'water' ? '°C' : 'pH',
    zero: 'real' as const,
  }));
  const draft = { ...likely, time, columns, zone: 'UTC', midnight: 'real' as const };
  expect(questionsOf(draft, facts, quantityOf)).toEqual([]);
  const turn = rowTurner(settled(draft, facts), (id) => quantityOf(id) ?? 'level', LATEST);
  const back: MadeRow[] = [];
  for await (const row of rowsBelowHead(text, structure)) {
    const turned = turn(row);
    if ('says' in turned) throw new Error(`line ${turned.line}: ${turned.says}`);
    expect(turned.faults).toEqual([]);
    const readingOf = (sensor: string) => turned.values.find((one) => one.sensor === sensor)?.value ?? null;
    const minute = (turned.moment.atMs - Date.UTC(2020, 0, 1)) / 60_000;
    back.push({ minute, values: [readingOf('water'), readingOf('acid')] });
  }
  return back.sort((a, b) => a.minute - b.minute);
}

test('a table written in any dialect comes back, value for value and minute for minute', async () => {
  await fc.assert(
    fc.asyncProperty(anyDialect, anyRows, async (dialect, rows) => {
      expect(await readBack(dialect, rows)).toEqual(rows);
    }),
    { numRuns: 120 },
  );
});

test('no bytes at all break the reading of a file: it is read or refused', async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 400 }), async (bytes) => {
      const read = await readLoggerFile(bytes, {});
      expect(read.ok || read.reason.why === 'invalid').toBe(true);
    }),
    { numRuns: 300 },
  );
  await fc.assert(
    fc.asyncProperty(
      fc.string({ unit: fc.constantFrom(...'2018-01/:, ;"\n{}[]t9.+#'), maxLength: 300 }),
      async (text) => {
        const read = await readLoggerFile(new TextEncoder().encode(text), {});
        expect(read.ok || read.reason.why === 'invalid').toBe(true);
      },
    ),
    { numRuns: 600 },
  );
});
