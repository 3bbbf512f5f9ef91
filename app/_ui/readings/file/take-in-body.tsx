import type { FormAction } from '../../form/answer';
import { Page } from '../../frame/page';
import { siteAddress } from '../../frame/site-address';
import { type Column, Ledger } from '../../table/ledger';
import { instantSaid } from '../../words/instant';
import type { LookView, TakenView } from './look-view';
import { TakeInForm } from './take-in-form';
import style from './file.module.css';

interface ImportView {
  id: string;
  fileName: string;
  layout: string;
  at: string;
  by: string;
  stored: number;
  repeats: number;
  conflicts: number;
  refused: number;
}

interface TakeInBodyProps {
  view: { site: { key: string; name: string; zone: string }; imports: ImportView[] };
  look: FormAction<LookView>;
  takeIn: FormAction<TakenView>;
}

/** Where the file of a logger is taken in, and those that were. */
export function TakeInBody({ view: { site, imports }, look, takeIn }: TakeInBodyProps) {
  return (
    <Page
      title="Take in the file of a logger"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'readings'), name: 'Readings' },
      ]}
      lead={
        <p>
          Choose a file, say what it does not say itself, and see how it will be stored before it is. The same file
          again, or a longer one later, adds nothing twice. The file itself is not kept.
        </p>
      }
    >
      <TakeInForm site={site.key} look={look} takeIn={takeIn} />
      {imports.length > 0 ? (
        <div className={style.before}>
          <Ledger
            caption={<h2>Taken in before</h2>}
            columns={columnsFor(site.zone)}
            rows={imports}
            keyOf={({ id }) => id}
          />
        </div>
      ) : null}
    </Page>
  );
}

function columnsFor(zone: string): Column<ImportView>[] {
  return [
    { id: 'at', head: 'At', cell: ({ at }) => instantSaid(at, zone) },
    { id: 'file', head: 'File', cell: ({ fileName }) => fileName },
    { id: 'layout', head: 'As files of', cell: ({ layout }) => layout },
    { id: 'by', head: 'By', cell: ({ by }) => by },
    { id: 'stored', head: 'Stored', figure: true, cell: ({ stored }) => stored },
    { id: 'repeats', head: 'There already', figure: true, cell: ({ repeats }) => repeats },
    { id: 'conflicts', head: 'In conflict', figure: true, cell: ({ conflicts }) => conflicts },
    { id: 'refused', head: 'Refused', figure: true, cell: ({ refused }) => refused },
  ];
}
