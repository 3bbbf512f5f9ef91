import { scheduleSaid } from '#core/rounds/schedule-words';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { NoteField } from '../rounds/note-field';
import { roundsAddress } from '../rounds/round-view';
import { KeptForm } from '../safeguards/kept-form';
import { Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { SheetEditor } from './sheet-editor';
import { QuietSaid } from './quiet-said';
import { SheetLines } from './sheet-lines';
import { type SheetView, sheetsAddress } from './sheet-views';

interface SheetBodyProps {
  page: SheetView;
  write: FormAction<unknown>;
  drop: FormAction<unknown>;
  retire: FormAction<unknown>;
}

/** One round sheet: edited by whoever may, read by all others, with the versions that were in force. */
export function SheetBody({ page, write, drop, retire }: SheetBodyProps) {
  const { site, sheet, isDraft, version, mayChange } = page;
  const hidden = { site: site.key, sheet: sheet.key };
  return (
    <Page
      title={sheet.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: roundsAddress(site.key), name: 'Rounds' },
        { href: sheetsAddress(site.key), name: 'Round sheets' },
      ]}
      lead={<Lead page={page} />}
    >
      <Section id="sheet" title={mayChange ? 'Write it' : 'Lines'}>
        {mayChange ? (
          <SheetEditor key={`${version} ${isDraft}`} page={page} write={write} />
        ) : (
          <SheetLines page={page} />
        )}
      </Section>
      {page.versions.length > 0 ? <Versions page={page} /> : null}
      {mayChange && isDraft ? (
        <Section id="drop" title="Forget the draft" note="What is in force stays.">
          <KeptForm action={drop} hidden={hidden} button="Forget this draft" done="It is forgotten." />
        </Section>
      ) : null}
      {mayChange && version !== null ? (
        <Section id="retire" title="Retire it" note="It is due no more; rounds that were walked on it stay.">
          <KeptForm
            action={retire}
            hidden={hidden}
            labels={{ why: 'Why' }}
            button="Retire this sheet"
            done="It is retired."
          >
            <NoteField name="why" title="Why it is no longer walked" isNeeded />
          </KeptForm>
        </Section>
      ) : null}
    </Page>
  );
}

function Lead({ page }: Pick<SheetBodyProps, 'page'>) {
  const { sheet, version, isDraft, gone } = page;
  return (
    <>
      <p>{scheduleSaid(sheet.schedule)}</p>
      <p>
        {version === null ? 'Not in force yet.' : `Version ${version} is in force.`}{' '}
        {isDraft ? 'What stands here is a draft.' : ''}{' '}
        {gone.length > 0 ? `Lines whose thing is no longer described, or is off: ${gone.length}.` : ''}
      </p>
      <QuietSaid page={page} />
    </>
  );
}

function Versions({ page: { site, versions } }: Pick<SheetBodyProps, 'page'>) {
  return (
    <Section id="versions" title="Versions" wide>
      <Ledger
        caption="As they came into force, the latest first."
        columns={[
          { id: 'version', head: 'Version', cell: (one) => one.version },
          { id: 'at', head: 'In force since', cell: ({ at }) => momentSaid(at, site.zone) },
          { id: 'by', head: 'By', cell: ({ by }) => by },
          { id: 'why', head: 'Why', cell: ({ reason }) => reason ?? '–' },
        ]}
        rows={versions}
        keyOf={(one) => String(one.version)}
      />
    </Section>
  );
}
