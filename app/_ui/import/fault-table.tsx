import { type Column, Ledger } from '../table/ledger';
import type { FileFault } from './answers';
import style from './import.module.css';

interface FaultTableProps {
  said: string;
  faults: FileFault[];
  /** Put the cursor on a line of the text. */
  goTo: (line: number) => void;
}

/** Everything that is wrong with a file, by line and path; a line leads to its place in the text. */
export function FaultTable({ said, faults, goTo }: FaultTableProps) {
  const columns: Column<FileFault>[] = [
    {
      id: 'line',
      head: 'Line',
      cell: ({ line, column }) =>
        line === undefined ? (
          '–'
        ) : (
          <button type="button" className={style.line} onClick={() => goTo(line)}>
            {line}:{column ?? 1}
          </button>
        ),
    },
    { id: 'path', head: 'Where', cell: ({ path }) => <code className={style.path}>{path || 'the file'}</code> },
    { id: 'message', head: 'What is wrong', cell: ({ message }) => message },
  ];
  return (
    <>
      <h2>{said}</h2>
      {faults.length > 0 ? (
        <Ledger
          caption="Press a line to go to it in the text above."
          columns={columns}
          rows={faults}
          keyOf={({ path, line, message }) => `${line} ${path} ${message}`}
        />
      ) : null}
    </>
  );
}
