import type { Asked } from '#core/states/effective';
import { Section } from '../frame/section';
import { type Column, Ledger } from '../table/ledger';
import { stateName } from './state-view';

const said = (states: Asked['because']) => states.map((state) => stateName(state).toLowerCase()).join(', ');

const COLUMNS: Column<Asked>[] = [
  { id: 'what', head: 'Equipment', cell: ({ name }) => name },
  { id: 'then', head: 'Is meant to be', cell: ({ then }) => then },
  { id: 'because', head: 'Because of', cell: ({ because }) => said(because) },
  { id: 'against', head: 'Gives way', cell: ({ against }) => (against.length > 0 ? said(against) : '–') },
];

/** What the states in force come to, per piece of equipment. */
export function AskedSection({ asked }: { asked: readonly Asked[] }) {
  if (asked.length === 0) return null;
  return (
    <Section
      id="asked"
      title="What the plans ask now"
      note="Where two states differ: people first, then what animals breathe by, then stillness. Holdfast switches nothing."
    >
      <Ledger caption="By equipment." columns={COLUMNS} rows={[...asked]} keyOf={({ key }) => key} />
    </Section>
  );
}
