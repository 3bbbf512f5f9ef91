import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import type { SensorReadingsView } from './sensor-view';
import { stateSaid } from './words';

interface Line {
  key: string;
  atMs: number;
  there: string;
  what: string;
  until: string;
}

const COLUMNS: Column<Line>[] = [
  { id: 'at', head: 'At', cell: ({ there }) => there },
  { id: 'what', head: 'What', cell: ({ what }) => what },
  { id: 'until', head: 'Until', cell: ({ until }) => until },
];

/** Alarms that were raised and states that were in force, as the drawing marks them, for whoever reads rather than looks. */
export function HappenedSection({ view: { raised, states } }: { view: SensorReadingsView }) {
  const lines: Line[] = [
    ...raised.map(({ id, atMs, name, there }) => ({ key: id, atMs, there, what: `alarm raised: ${name}`, until: '–' })),
    ...states.map(({ state, fromMs, there, endedThere }) => ({
      key: `${state} ${fromMs}`,
      atMs: fromMs,
      there,
      what: `state: ${stateSaid(state)}`,
      until: endedThere ?? 'still in force',
    })),
  ].sort((a, b) => a.atMs - b.atMs);
  if (lines.length === 0) return null;
  return (
    <Section id="happened" title="Alarms and states">
      <Ledger
        narrow
        caption="Alarms that this raised, and states of the system while it was read."
        columns={COLUMNS}
        rows={lines}
        keyOf={({ key }) => key}
      />
    </Section>
  );
}
