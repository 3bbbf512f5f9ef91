import type { DraftGroup, Field } from '#core/forms/field';
import { Page } from '../frame/page';
import { siteAddress } from '../frame/site-address';
import { withArticle } from '../words/article';
import type { ChangeActions, ChangeOf } from './answers';
import { ThingForm } from './thing-form';

/** What the page of a new thing is made from. */
export interface NewThingPageData {
  site: { key: string; name: string };
  system: { key: string; name: string } | null;
  one: string;
  fields: Field[];
  draft: DraftGroup;
}

/** The form for a thing that is to be added. */
export function NewThingPage({ page, of, actions }: { page: NewThingPageData; of: ChangeOf; actions: ChangeActions }) {
  const { site, system, one } = page;
  return (
    <Page
      title={`Add ${withArticle(one)}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'describe'), name: 'Description' },
      ]}
      lead={
        <p>To {system ? system.name : site.name}. Figures nobody knows may be left empty, or said to be not known.</p>
      }
    >
      {/* Begun anew with other units: what was typed in one must never be read in the other. */}
      <ThingForm key={of.units} fields={page.fields} shown={page.draft} of={of} actions={actions} mayDescribe />
    </Page>
  );
}
