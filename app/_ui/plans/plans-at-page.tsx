import Link from '../frame/link';
import { useId } from 'react';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { namesOf } from '../words/names';
import { planLines } from '../words/plan-lines';
import { plansAt } from './data';
import style from './plans.module.css';

/** A plan that was in force. */
interface PlanThen {
  equipment: string;
  name: string;
  version: number;
  plan: Plan;
  since: Date;
  until: Date | null;
}

/** What the page is made from. */
export interface PlansAtData {
  site: { key: string; name: string; zone: string };
  facility: Facility;
  system: System;
  /** ISO date and HH:MM at the site. */
  day: string;
  time: string;
  plans: PlanThen[];
}

/** What was in force in a system at an instant, also of equipment that is no longer there. */
export function PlansAtPageBody({ page, units }: { page: PlansAtData; units: Custom }) {
  const { site, system, day, time, plans } = page;
  return (
    <Page
      title={`Plans of ${system.name}`}
      over={[
        { href: siteAddress(site.key), name: site.name },
        { href: plansAt(site.key), name: 'Plans' },
      ]}
      lead={
        <p>
          What was in force when the clocks of {site.zone} showed {day}, {time}.
        </p>
      }
    >
      <Section id="when" title="When">
        <WhenForm day={day} time={time} />
      </Section>
      <Section id="then" wide title="In force then">
        {plans.length === 0 ? <p>Nothing was in force then.</p> : <ThenTable page={page} units={units} />}
      </Section>
    </Page>
  );
}

function WhenForm({ day, time }: { day: string; time: string }) {
  const [dayId, timeId] = [useId(), useId()];
  return (
    <form method="get" className={style.choose}>
      <p className={style.asked}>
        <label htmlFor={dayId}>Day</label>
        <input id={dayId} type="date" name="day" required defaultValue={day} />
      </p>
      <p className={style.asked}>
        <label htmlFor={timeId}>Time at the site</label>
        <input id={timeId} type="time" name="time" required defaultValue={time} />
      </p>
      <button type="submit" className={style.second}>
        Show
      </button>
    </form>
  );
}

function ThenTable({ page, units }: { page: PlansAtData; units: Custom }) {
  const { site, facility, system, plans } = page;
  const speech = { units, names: namesOf(facility, system) };
  const living = new Set(system.equipment.map(({ key }) => key));
  const columns: Column<PlanThen>[] = [
    {
      id: 'equipment',
      head: 'Equipment',
      cell: ({ equipment, name }) =>
        living.has(equipment) ? (
          <Link href={plansAt(site.key, system.key, equipment)}>{name}</Link>
        ) : (
          `${name} (retired since)`
        ),
    },
    {
      id: 'plan',
      head: 'What it was to do',
      cell: ({ plan }) =>
        planLines(speech, { plan }).map(({ layer, says }) => (
          <span key={`${layer} ${says}`} className={style.open}>
            {says}
          </span>
        )),
    },
    { id: 'version', head: 'Version', figure: true, cell: ({ version }) => version },
    { id: 'since', head: 'Since', cell: ({ since }) => instantSaid(since.toISOString(), site.zone) },
    {
      id: 'until',
      head: 'Until',
      cell: ({ until }) => (until ? instantSaid(until.toISOString(), site.zone) : 'still in force'),
    },
  ];
  return (
    <Ledger
      caption="Highest authority first in every plan."
      columns={columns}
      rows={plans}
      keyOf={({ equipment, version, since }) => `${equipment} ${version} ${since.toISOString()}`}
    />
  );
}
