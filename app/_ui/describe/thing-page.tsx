import Link from '../frame/link';
import type { DraftGroup, Field } from '#core/forms/field';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import type { ChangeActions, ChangeOf } from './answers';
import { type History, ThingHistory } from './thing-history';
import { thingAddress } from './thing-address';
import { ThingForm } from './thing-form';
import { capital } from '../words/capital';

/** What the page of a thing is made from. */
export interface ThingPageData {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string } | null;
  name: string;
  one: string;
  fields: Field[];
  draft: DraftGroup;
  acts: { replace: boolean; move: boolean; retire: boolean };
  mayDescribe: boolean;
  history: History | null;
}

interface ThingPageProps {
  page: ThingPageData;
  of: ChangeOf & { key: string };
  actions: ChangeActions;
}

const TITLES: Record<ChangeOf['act'], (name: string) => string> = {
  change: (name) => name,
  add: (name) => name,
  replace: (name) => `Replace ${name}`,
  move: (name) => `Move ${name}`,
  retire: (name) => `Retire ${name}`,
};

const LEADS: Record<ChangeOf['act'], string> = {
  change: '',
  add: '',
  replace:
    'A new one takes its place under the same key: say what the new one is. The one that goes is retired with its plans; both stand in the history.',
  move: 'It stays what it is, with its history.',
  retire:
    'It is no longer part of the description. Its history stays. While something still refers to it, it cannot go.',
};

/** The page of a thing: its form, what else can be done with it, and what became of it so far. */
export function ThingPageBody({ page, of, actions }: ThingPageProps) {
  const { site, system, name, one, mayDescribe, history } = page;
  return (
    <Page
      title={TITLES[of.act](name)}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'describe'), name: 'Description' },
        ...(of.act === 'change' ? [] : [{ href: thingAddress(site.key, of.noun, of.system, of.key), name }]),
      ]}
      lead={
        <>
          <p>
            {capital(one)}
            {of.noun === 'site' ? '' : ` of ${system ? system.name : site.name}`}.
          </p>
          {LEADS[of.act] ? <p>{LEADS[of.act]}</p> : null}
          {mayDescribe ? null : <p>Your role at this site lets you read this, not change it.</p>}
        </>
      }
    >
      <Section id="form" title={of.act === 'change' ? 'As described' : 'What to say'}>
        {/* Another custom of units begins the form anew: digits typed in one must never be read in the other. */}
        <ThingForm
          key={of.units}
          fields={page.fields}
          shown={page.draft}
          of={of}
          actions={actions}
          mayDescribe={mayDescribe}
        />
      </Section>
      {of.act === 'change' && mayDescribe ? <OtherActs page={page} of={of} /> : null}
      {history ? (
        <Section id="history" title="History" note={`Times are those of ${site.zone}.`}>
          <ThingHistory history={history} zone={site.zone} />
        </Section>
      ) : null}
    </Page>
  );
}

function OtherActs({ page: { site, acts, system }, of }: Pick<ThingPageProps, 'page' | 'of'>) {
  const to = (act: string, words: string) => (
    <li key={act}>
      <Link href={thingAddress(site.key, of.noun, of.system, of.key, act)}>{words}</Link>
    </li>
  );
  const plan = siteAddress(site.key, 'plans', of.system ?? '', of.key);
  const others = [
    ...(of.noun === 'equipment' && system
      ? [
          <li key="plan">
            <Link href={plan}>Its plan, and its versions</Link>
          </li>,
        ]
      : []),
    ...(acts.replace ? [to('replace', 'Replace it by another')] : []),
    ...(acts.move ? [to('move', 'Move it to another tank or system')] : []),
    ...(acts.retire ? [to('retire', 'Retire it')] : []),
  ];
  if (others.length === 0) return null;
  return (
    <Section id="acts" title="What else">
      <ul>{others}</ul>
    </Section>
  );
}
