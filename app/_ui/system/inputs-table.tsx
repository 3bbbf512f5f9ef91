import { badSaid, changesSaid, originSaid, sourceSaid } from '#core/review/input-words';
import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { type Column, Ledger } from '../table/ledger';
import { inputSaid, rangeSaid, unitOfInput } from './figure-said';

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
    { id: 'value', head: 'Taken as', cell: (input) => inputSaid(units, input.value, unitOfInput(input)) },
    {
      id: 'range',
      head: 'Plausible range',
      cell: (input) => rangeSaid(units, input),
    },
    { id: 'bad', head: 'Bad end', cell: badSaid },
    { id: 'origin', head: 'Comes from', cell: originSaid },
    { id: 'source', head: 'Source', cell: sourceSaid },
    { id: 'confidence', head: 'Confidence', cell: (input) => confidenceOf(input) },
    {
      id: 'changes',
      head: 'Would change',
      cell: changesSaid,
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
