import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { QuietGate } from '../rounds/quiet-gate';
import { OffForm } from './off-form';
import { SAFEGUARD_WORDS, type SafeguardView } from './safeguard-view';
import { dueSaid, lastSaid, Standing } from './standing';
import { TestForm } from './test-form';
import { TestLedger } from './test-ledger';

interface SafeguardBodyProps {
  page: SafeguardView;
  record: FormAction<unknown>;
  withdraw: FormAction<unknown>;
  off: FormAction<unknown>;
  back: FormAction<unknown>;
}

/** A safeguard: how it stands, its ledger, and what may be done with it. */
export function SafeguardBody({ page, record, withdraw, off, back }: SafeguardBodyProps) {
  const { site, line, mayTest, maySwitch } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title={line.name}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/safeguards`, name: 'Safeguards' },
      ]}
      lead={<Lead page={page} />}
    >
      {mayTest ? (
        <Section id="test" title="Record a test">
          <QuietGate quiet={page.quiet} zone={site.zone}>
            <TestForm page={page} record={record} />
          </QuietGate>
        </Section>
      ) : null}
      <Section id="ledger" title="Tests" wide>
        <TestLedger page={page} withdraw={withdraw} />
      </Section>
      {line.off || maySwitch ? (
        <Section id="off" title="Out of service" note="While it is off, the review counts on it in neither column.">
          <OffSaid page={page} />
          {maySwitch ? <OffForm page={page} off={off} back={back} /> : null}
        </Section>
      ) : null}
    </Page>
  );
}

function Lead({ page: { site, line, today } }: { page: SafeguardView }) {
  const { system } = line;
  return (
    <>
      <p>
        <Standing line={line} />. Kind: {SAFEGUARD_WORDS[line.kind]}. It belongs to{' '}
        {system ? <Link href={siteAddress(site.key, 'systems', system.key)}>{system.name}</Link> : 'the site'}
        {' and is'} to be tested every {line.testEveryDays} days.
      </p>
      <p>
        Last test: {lastSaid(line)}. Due: {dueSaid(line, today)}.
      </p>
    </>
  );
}

function OffSaid({ page: { line, today } }: { page: SafeguardView }) {
  const { off } = line;
  if (!off) return <p>It is in service.</p>;
  const when = off.until < today ? 'It was off' : off.since > today ? 'It will be off' : 'It is off';
  return (
    <p>
      {when} from {off.since} to {off.until}, for {off.by} to put back. Reason: {off.why}
    </p>
  );
}
