import Link from '../frame/link';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { StateStands } from './state-line';
import { type SiteOfStates, type StateLineView, stateName } from './state-view';

interface SectionProps {
  page: { site: SiteOfStates; system: { key: string }; lines: StateLineView[]; maySet: boolean };
}

/** The states a system is in, on its own page. */
export function SystemStatesSection({ page: { site, system, lines, maySet } }: SectionProps) {
  return (
    <Section id="states" title="State" note={`Times are those of ${site.zone}.`}>
      {lines.every(({ isOver }) => isOver) ? <p>In normal running, as far as anybody has said.</p> : null}
      <ul>
        {lines.map((line) => (
          <li key={line.run}>
            {stateName(line.state)}: <StateStands line={line} zone={site.zone} />, begun by {line.begunBy}
          </li>
        ))}
      </ul>
      <p>
        <Link href={siteAddress(site.key, 'states', system.key)}>
          {maySet ? 'Begin, put off or end a state' : 'States of this system'}
        </Link>
      </p>
    </Section>
  );
}
