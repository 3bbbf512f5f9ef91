import Form from 'next/form';
import type { ReviewDifference } from '#core/review/review-difference';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import style from './kept-difference.module.css';
import { ReviewDifferenceView } from './review-difference';

/** A kept review that is compared, or may be. */
export interface Side {
  id: string;
  /** UTC, ISO. */
  computedAt: string;
  judgedOn: string;
  engineVersion: string;
}

/** What the page is made from. */
export interface KeptDifferenceView {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  from: Side | null;
  to: Side | null;
  difference: ReviewDifference | null;
  changes: { at: string; what: string }[] | null;
  kept: Side[];
}

/** What tells one kept review of a system from another, and what was changed between them. */
export function KeptDifferenceBody({ page }: { page: KeptDifferenceView }) {
  const { site, system, from, to, difference } = page;
  const at = siteAddress(site.key, 'systems', system.key);
  return (
    <Page
      title={`Two reviews of ${system.name}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: at, name: system.name },
        { href: `${at}/review`, name: 'Review' },
      ]}
      lead={
        from && to ? (
          <p>
            Between the review of {instantSaid(from.computedAt, site.zone)} and that of{' '}
            {instantSaid(to.computedAt, site.zone)} ({site.zone}). {otherwiseSaid(from, to)}
          </p>
        ) : (
          <p>Fewer than two reviews of this system are kept: there is nothing to compare yet.</p>
        )
      }
    >
      {difference ? (
        <Section id="difference" wide title="What the reviews say otherwise">
          <ReviewDifferenceView difference={difference} heads={{ before: 'Before', after: 'After' }} />
        </Section>
      ) : null}
      {from && to ? <Changes page={page} /> : null}
      {page.kept.length > 1 ? <Choose page={page} at={at} /> : null}
    </Page>
  );
}

/** What beside the description may tell two reviews apart. */
function otherwiseSaid(from: Side, to: Side): string {
  const engine =
    from.engineVersion === to.engineVersion
      ? `Both were computed by engine ${to.engineVersion}`
      : `The first was computed by engine ${from.engineVersion}, the second by engine ${to.engineVersion}, which may judge otherwise`;
  return `${engine}; tests were judged on ${from.judgedOn}${from.judgedOn === to.judgedOn ? ' in both' : ` and on ${to.judgedOn}`}.`;
}

function Changes({ page: { changes, site } }: { page: KeptDifferenceView }) {
  return (
    <Section id="changes" wide title="What was changed between them" note="At the whole site, from the record.">
      {changes === null ? <p>You may not read the record of this site.</p> : null}
      {changes?.length === 0 ? (
        <p>Nothing was changed by anybody: a test ran out, a time off ended, or another engine computed it.</p>
      ) : null}
      {changes && changes.length > 0 ? (
        <Ledger
          caption="Changes that a review goes by, oldest first."
          columns={[
            { id: 'at', head: 'When', cell: ({ at }) => instantSaid(at, site.zone) },
            { id: 'what', head: 'What', cell: ({ what }) => what },
          ]}
          rows={changes.map((one, i) => ({ ...one, key: `${one.at} ${i}` }))}
          keyOf={({ key }) => key}
        />
      ) : null}
    </Section>
  );
}

function Choose({ page: { kept, from, to, site }, at }: { page: KeptDifferenceView; at: string }) {
  const choices = (name: string, label: string, chosen: string | undefined) => (
    <label className={style.choice}>
      <span>{label}</span>
      <select name={name} defaultValue={chosen}>
        {kept.map(({ id, computedAt }) => (
          <option key={id} value={id}>
            {instantSaid(computedAt, site.zone)}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <Section id="choose" title="Compare two others">
      <Form action={`${at}/review/difference`} className={style.form}>
        {choices('from', 'From the review of', from?.id)}
        {choices('to', 'to that of', to?.id)}
        <button type="submit">Show the difference</button>
      </Form>
    </Section>
  );
}
