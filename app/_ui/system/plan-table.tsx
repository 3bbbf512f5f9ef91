import type { System } from '#core/facility/system';
import { type Column, Ledger } from '../table/ledger';
import { type PlanLine, planLines } from '../words/plan-lines';
import type { Speech } from '../words/said';

interface Row extends PlanLine {
  key: string;
  equipment: string;
}

/** Every plan, line by line, with who carries it out. */
export function PlanTable({ system, speech }: { system: System; speech: Speech }) {
  const rows = system.equipment.flatMap((e) =>
    planLines(speech, e).map((line, i): Row => ({ ...line, key: `${e.key} ${i}`, equipment: e.name })),
  );
  const columns: Column<Row>[] = [
    { id: 'equipment', head: 'Equipment', cell: (row) => row.equipment },
    { id: 'layer', head: 'Layer', cell: (row) => row.layer },
    { id: 'says', head: 'What it does', cell: (row) => row.says },
    { id: 'by', head: 'Carried out by', cell: (row) => (row.by === 'hard-wired' ? 'hard wiring' : `a ${row.by}`) },
    {
      id: 'safeguard',
      head: 'Safeguard',
      cell: (row) => row.safeguard ?? (row.layer === 'interlock' ? 'no ledger of tests' : ''),
    },
  ];
  return (
    <Ledger
      caption="Highest authority first; the order is fixed. Only what a device carries out is credited as automatic."
      columns={columns}
      rows={rows}
      keyOf={(row) => row.key}
    />
  );
}
