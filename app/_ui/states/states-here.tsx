import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { BeginChoice } from './begin-choice';
import { type StateActions, StateLine } from './state-line';
import type { SiteOfStates, StateChoiceView, StateLineView } from './state-view';

interface StatesHereProps {
  page: {
    site: SiteOfStates;
    system: { key: string; name: string };
    lines: StateLineView[];
    choices: StateChoiceView[];
    equipment: string[];
  };
  units: Custom;
  actions: StateActions & { begin: FormAction<unknown> };
}

/** The states of a system where its checks are done: those in force are ended there, others are begun, and nobody leaves the page. */
export function StatesHere({ page: { site, system, lines, choices, equipment }, units, actions }: StatesHereProps) {
  const place = { site: site.key, system: system.key };
  return (
    <Fold title={`Begin or end a state of ${system.name}`}>
      {lines.map((line) => (
        <StateLine key={line.run} units={units} site={site} line={line} actions={actions} named={false} />
      ))}
      {choices
        .filter(({ isDescribed }) => isDescribed)
        .map((choice) => (
          <BeginChoice key={choice.state} place={place} choice={choice} equipment={equipment} begin={actions.begin} />
        ))}
      <p>
        <Link href={siteAddress(site.key, 'states', system.key)}>Any other state, and what was done</Link>
      </p>
    </Fold>
  );
}
