import type { OxygenWithout } from '#core/review/oxygen-without';
import type { Begun } from '#core/states/state-end';
import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { OxygenBudget } from './oxygen-budget';
import { ProofList } from './proof-list';
import { StateCautions } from './state-cautions';
import { BeginForm } from './state-forms';
import { type StateActions, StateLine } from './state-line';
import { lastingSaid, type SiteOfStates, type StateChoiceView, type StateLineView, stateName } from './state-view';
import style from './states.module.css';

export interface StateFormView {
  site: SiteOfStates;
  system: { key: string; name: string };
  state: Begun;
  line: StateLineView | null;
  choice: StateChoiceView | null;
  oxygen: OxygenWithout | null;
  equipment: string[];
  maySet: boolean;
}

interface Props {
  page: StateFormView;
  units: Custom;
  actions: StateActions & { begin: FormAction<unknown> };
}

/** One state of one system, where a label leads to: begun there, or ended. */
export function StateFormBody({ page, units, actions }: Props) {
  const { site, system, state, line, choice, maySet } = page;
  const at = siteAddress(site.key);
  return (
    <Page
      title={`${stateName(state)}, ${system.name}`}
      over={[
        { href: '/', name: 'Systems' },
        { href: at, name: site.name },
        { href: `${at}/states`, name: 'States' },
        { href: siteAddress(site.key, 'states', system.key), name: system.name },
      ]}
      lead={<p>Nothing begins or ends before you press. Holdfast switches nothing.</p>}
    >
      {line ? (
        <Section id="in-force" title={line.isOver ? 'Ended by a device' : 'In force'}>
          <StateLine units={units} site={site} line={line} actions={maySet ? actions : null} named={false} />
        </Section>
      ) : null}
      {choice ? (
        <Section
          id="begin"
          title={`Begin ${stateName(state).toLowerCase()}`}
          note={`Usually ${lastingSaid(choice.lastsMin)}.`}
        >
          <p className={style.small}>
            {choice.hasHandsIn
              ? 'Hands are in the water: it never ends by itself.'
              : choice.endsItself
                ? 'A device ends it.'
                : 'A person ends it.'}
          </p>
          <OxygenBudget oxygen={page.oxygen} />
          <StateCautions state={state} equipment={page.equipment} />
          <ProofList proofs={choice.proofs} />
          {maySet ? (
            <BeginForm place={{ site: site.key, system: system.key }} choice={choice} begin={actions.begin} />
          ) : null}
        </Section>
      ) : null}
    </Page>
  );
}
