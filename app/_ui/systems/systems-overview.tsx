import { overdueEverywhere } from '#core/rounds/everywhere';
import type { Custom } from '#core/units/shown';
import { Section } from '../frame/section';
import { VerdictLegend } from '../marks/verdict-legend';
import { asksOfTable } from './asked';
import { EverywhereLines } from './everywhere-lines';
import { ReviewsProgress } from './reviews-progress';
import { shownFirst } from './shown-first';
import { SystemsLead } from './systems-lead';
import { SystemsTable } from './systems-table';
import type { ListedSystem } from './system-row';

interface SystemsOverviewProps {
  systems: ListedSystem[];
  units: Custom;
  /** The instant they stand for, UTC, ISO. */
  at: string;
  /** What stands behind the question mark of the address. */
  search: Readonly<Record<string, unknown>>;
}

/** Every system with what its review says, and what the words of the table mean. */
export function SystemsOverview({ systems, units, at, search }: SystemsOverviewProps) {
  const done = systems.filter(({ review }) => review.state !== 'under-way').length;
  const sites = [...new Map(systems.map(({ site }) => [site.key, site])).values()];
  const overdue = overdueEverywhere(systems);
  const shown = shownFirst(systems, { units, at, hasSites: sites.length > 1, overdue }, asksOfTable(search));
  return (
    <>
      <SystemsLead systems={systems} />
      <ReviewsProgress done={done} all={systems.length} />
      <EverywhereLines sites={sites} overdue={overdue} />
      <SystemsTable {...shown} />
      <Section id="verdicts" wide title="What the words mean">
        <VerdictLegend />
        <p>
          As claimed counts on every safeguard that is not off; as tested only on those whose last test worked and is
          not overdue. Where a harm befalls the floor or the pump rather than the animals, it is said beside the
          verdict.
        </p>
      </Section>
    </>
  );
}
