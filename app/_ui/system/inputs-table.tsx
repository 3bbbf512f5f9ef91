import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { type Column, Ledger } from '../table/ledger';
import { inputSaid, rangeSaid } from './figure-said';

/** Origins that stand where a source would: nobody filled these in. */
const GIVEN = new Set(['entered', 'measured']);

/** What was filled in by default or carries a plausible range, with source and confidence. */
export function InputsTable({
  inputs,
  askNext,
  units,
}: {
  inputs: OpenInput[];
  askNext: string | null;
  units: Custom;
}) {
  const columns: Column<OpenInput>[] = [
    {
      id: 'name',
      head: 'Figure',
      cell: (input) => (
        <>
          {input.name}
          {input.path === askNext ? <strong> (ask for this next)</strong> : null}
        </>
      ),
    },
    { id: 'value', head: 'Taken as', figure: true, cell: (input) => inputSaid(units, input.value, input.unit) },
    {
      id: 'range',
      head: 'Plausible range',
      figure: true,
      cell: (input) => rangeSaid(units, input),
    },
    { id: 'origin', head: 'Comes from', cell: (input) => (GIVEN.has(input.source) ? input.source : 'default') },
    { id: 'source', head: 'Source', cell: (input) => (GIVEN.has(input.source) ? '' : input.source) },
    { id: 'confidence', head: 'Confidence', cell: (input) => confidenceOf(input) },
    {
      id: 'changes',
      head: 'Would change',
      figure: true,
      cell: (input) => (input.changes.length > 0 ? `${input.changes.length} verdicts` : ''),
    },
  ];
  return (
    <Ledger
      caption="Every verdict is computed at the value; the range, on its bad side, decides whether it is unsure."
      columns={columns}
      rows={inputs}
      keyOf={(input) => input.path}
    />
  );
}

function confidenceOf(input: OpenInput): string {
  return 'confidence' in input && typeof input.confidence === 'string' ? input.confidence : '';
}
