import type { Facility } from '#core/facility/facility';
import type { Equipment, System } from '#core/facility/system';
import { type Column, Ledger } from '../table/ledger';
import { EQUIPMENT_WORDS } from '../words/kinds';
import type { Names } from '../words/names';

/** The drawing as a table: each piece of equipment, where it stands and what feeds it. */
export function PowerTable({ facility, system, names }: { facility: Facility; system: System; names: Names }) {
  const circuits = new Map(facility.circuits.map((c) => [c.key, c]));
  const columns: Column<Equipment>[] = [
    { id: 'name', head: 'Equipment', cell: (e) => e.name },
    { id: 'type', head: 'Type', cell: (e) => EQUIPMENT_WORDS[e.type] },
    { id: 'tank', head: 'In', cell: (e) => names.tank(e.tank) },
    { id: 'circuit', head: 'Circuit', cell: (e) => (e.circuit === undefined ? 'none' : names.circuit(e.circuit)) },
    { id: 'rcd', head: 'RCD group', cell: (e) => circuits.get(e.circuit ?? '')?.rcd ?? 'none' },
    {
      id: 'backed',
      head: 'Backed by',
      cell: (e) =>
        circuits
          .get(e.circuit ?? '')
          ?.backedBy.map((by) => (by === 'ups' ? 'battery' : by))
          .join(', ') || 'utility only',
    },
    {
      id: 'watts',
      head: 'Watts range',
      figure: true,
      cell: ({ wattsRange }) => (wattsRange ? `${wattsRange.minW} to ${wattsRange.maxW} W` : 'none'),
    },
  ];
  return (
    <Ledger
      caption="Equipment, where it stands and what feeds it"
      columns={columns}
      rows={system.equipment}
      keyOf={(e) => e.key}
    />
  );
}
