import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { namesOf } from '../words/names';
import { planLines } from '../words/plan-lines';
import { plansAt, STATUS_WORDS } from './data';
import style from './plans.module.css';

/** A version that waits. */
interface OpenVersion {
  version: number;
  status: 'draft' | 'submitted';
  since: Date;
  writtenBy: string | null;
  isOwn: boolean;
}

/** What becomes of the plan of one piece of equipment. */
interface Entry {
  system: string;
  equipment: string;
  inForce: { version: number; since: Date; by: string | null };
  open: OpenVersion[];
}

/** What the page of a site's plans is made from. */
export interface PlansPageData {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  entries: Entry[];
}

/** All plans of a site: what waits for somebody, then every piece of equipment system by system. */
export function PlansPageBody({ page, units }: { page: PlansPageData; units: Custom }) {
  const { site, facility, entries } = page;
  const waiting = entries.flatMap((entry) =>
    entry.open.filter(({ status, isOwn }) => status === 'submitted' || isOwn).map((open) => ({ entry, open })),
  );
  return (
    <Page
      title="Plans"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
      ]}
      lead={
        <p>
          How each piece of equipment is meant to behave. One person writes a plan, another puts it into force; every
          version stays. Times are those of {site.zone}.
        </p>
      }
    >
      <Section id="waiting" title="Waiting">
        {waiting.length === 0 ? <p>Nothing waits for anybody.</p> : <WaitingTable page={page} waiting={waiting} />}
      </Section>
      {facility.systems.map((system) => (
        <Section
          key={system.key}
          id={`system-${system.key}`}
          wide
          title={system.name}
          note={<Link href={plansAt(site.key, system.key)}>What was in force at some other time</Link>}
        >
          <SystemPlans page={page} system={system} units={units} />
        </Section>
      ))}
    </Page>
  );
}

function WaitingTable({ page, waiting }: { page: PlansPageData; waiting: { entry: Entry; open: OpenVersion }[] }) {
  const { site, facility } = page;
  const columns: Column<(typeof waiting)[number]>[] = [
    {
      id: 'plan',
      head: 'Plan',
      cell: ({ entry, open }) => (
        <Link href={`${plansAt(site.key, entry.system, entry.equipment)}#waiting`}>
          {nameOf(facility, entry)}, version {open.version}
        </Link>
      ),
    },
    { id: 'status', head: 'Is', cell: ({ open }) => STATUS_WORDS[open.status] },
    { id: 'by', head: 'Written by', cell: ({ open }) => (open.isOwn ? 'you' : (open.writtenBy ?? '–')) },
    {
      id: 'for',
      head: 'Waits for',
      cell: ({ open }) =>
        open.status === 'draft' ? 'you to submit it' : open.isOwn ? 'somebody else' : 'somebody other than its author',
    },
    { id: 'since', head: 'Since', cell: ({ open }) => instantSaid(open.since.toISOString(), site.zone) },
  ];
  return (
    <Ledger
      caption="Drafts of your own, and what was submitted by anybody."
      columns={columns}
      rows={waiting}
      keyOf={({ entry, open }) => `${entry.system} ${entry.equipment} ${open.version}`}
    />
  );
}

function SystemPlans({ page, system, units }: { page: PlansPageData; system: System; units: Custom }) {
  const { site, facility, entries } = page;
  const speech = { units, names: namesOf(facility, system) };
  const columns: Column<Entry>[] = [
    {
      id: 'equipment',
      head: 'Equipment',
      cell: ({ equipment }) => (
        <Link href={plansAt(site.key, system.key, equipment)}>{speech.names.equipment(equipment)}</Link>
      ),
    },
    {
      id: 'plan',
      head: 'Plan in force',
      cell: ({ equipment }) => {
        const found = system.equipment.find(({ key }) => key === equipment);
        const lines = found ? planLines(speech, found) : [];
        return lines.map(({ layer, says }) => (
          <span key={`${layer} ${says}`} className={style.open}>
            {says}
          </span>
        ));
      },
    },
    { id: 'version', head: 'Version', figure: true, cell: ({ inForce }) => inForce.version },
    { id: 'since', head: 'Since', cell: ({ inForce }) => instantSaid(inForce.since.toISOString(), site.zone) },
    { id: 'by', head: 'Put there by', cell: ({ inForce }) => inForce.by ?? '–' },
  ];
  return (
    <Ledger
      caption="Highest authority first in every plan."
      columns={columns}
      rows={entries.filter((entry) => entry.system === system.key)}
      keyOf={({ equipment }) => equipment}
    />
  );
}

function nameOf(facility: Facility, { system, equipment }: Entry): string {
  const found = facility.systems.find(({ key }) => key === system);
  return `${found?.name ?? system}, ${found?.equipment.find(({ key }) => key === equipment)?.name ?? equipment}`;
}
