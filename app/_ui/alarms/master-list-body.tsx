import { BANDS_MIN, MATRIX } from '#core/alarms/design/priority';
import type { SystemReview } from '#core/review/result';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Custom } from '#core/units/shown';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import { namesOf } from '../words/names';
import { CONSEQUENCE_WORDS } from './design-words';
import { MasterList } from './master-list';

interface MasterListBodyProps {
  facility: Facility;
  system: System;
  review: SystemReview | null;
  units: Custom;
  mayDescribe: boolean;
}

/** The master alarm list of a system: for whoever designs it, and to print beside the plant. */
export function MasterListBody({ facility, system, review, units, mayDescribe }: MasterListBodyProps) {
  const site = facility.site.key;
  return (
    <Page
      title={`Master alarm list of ${system.name}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site), name: facility.site.name },
        { href: siteAddress(site, 'systems', system.key), name: system.name },
      ]}
      lead={
        <p>
          What each alarm is for, how soon it asks for somebody, and where its limit stands between what is normal and
          the last chance.{review ? '' : ' The review is not there yet: priorities and limits follow from it.'}
        </p>
      }
    >
      <Section id="list" wide title="Alarms" note={`${system.alarms.length} are defined.`}>
        <MasterList
          site={site}
          system={system}
          designs={review?.alarms ?? []}
          cases={review?.cases ?? []}
          speech={{ units, names: namesOf(facility, system) }}
          mayDescribe={mayDescribe}
        />
      </Section>
      <Section id="matrix" title="Where the priority comes from" note="Common practice, no source.">
        <PriorityMatrix />
      </Section>
    </Page>
  );
}

const ROWS = ['animals', 'floor', 'equipment', 'none'] as const;

function PriorityMatrix() {
  const ends = BANDS_MIN.map((min) => lasting(min * 60));
  const heads = [
    `under ${ends[0]}`,
    ...ends.slice(1).map((end, i) => `${ends[i]} to ${end}`),
    `${ends[ends.length - 1]} or more`,
  ];
  return (
    <Ledger
      caption="What follows when nobody acts, and the time in which acting still helps."
      columns={[
        { id: 'what', head: 'Consequence', cell: (row: (typeof ROWS)[number]) => CONSEQUENCE_WORDS[row] },
        ...heads.map((head, band) => ({
          id: head,
          head,
          cell: (row: (typeof ROWS)[number]) => MATRIX[row][band] ?? '',
        })),
      ]}
      rows={[...ROWS]}
      keyOf={(row) => row}
    />
  );
}
