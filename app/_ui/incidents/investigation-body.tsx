import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { LiveRefresh } from '../live/live-refresh';
import { ActionForm, DoneForm } from './action-forms';
import { ActionTable } from './action-table';
import { CaseCompared } from './case-compared';
import { CauseForm } from './cause-form';
import { CauseList } from './cause-list';
import { DeedForm } from './deed-form';
import { DeedTable } from './deed-table';
import { IncidentFrame } from './incident-frame';
import type { InvestigationView } from './investigation-view';
import { LossForm } from './loss-form';
import { LossTable } from './loss-table';
import { SignSection } from './sign-section';
import { SummarySection } from './summary-section';
import { WithdrawFold } from './withdraw-fold';

interface InvestigationProps {
  page: InvestigationView;
  units: Custom;
  investigate: FormAction<unknown>;
  sign: FormAction<unknown>;
  withdraw: FormAction<unknown>;
}

/** The investigation: what was lost, what each safeguard did, why, what is done about it, and who stands for it. */
export function InvestigationBody({ page, units, investigate, sign, withdraw }: InvestigationProps) {
  const { head, ids } = page;
  const may = head.mayInvestigate;
  const shared = { head, ids, investigate };
  const back = (entry: string) =>
    may ? <WithdrawFold head={head} id={ids[entry]} entry={entry} withdraw={withdraw} /> : null;
  return (
    <IncidentFrame head={head} page="investigation">
      <Section
        id="losses"
        title="Losses"
        note="Animals are followed for 14 days: those that die late are lost as well."
      >
        <LossTable page={page} units={units} back={back} />
        {may ? (
          <Fold title="Record a loss">
            <LossForm {...shared} groups={page.groups} units={units} />
          </Fold>
        ) : null}
      </Section>
      <Section
        id="safeguards"
        title="What each safeguard did"
        note="Every safeguard that this system could lean on when the fault began, as it was described then."
        wide
      >
        <DeedTable page={page} form={may ? (deed) => <DeedForm {...shared} deed={deed} /> : null} />
      </Section>
      <Section
        id="causes"
        title="Causes"
        note="Kinds of cause and never names. It stops at something that can be changed."
      >
        <CauseList causes={page.causes} back={back} />
        {may ? <CauseForm {...shared} /> : null}
      </Section>
      <SummarySection {...shared} page={page} />
      <Section id="case" title="Held against the review">
        <CaseCompared {...shared} choice={page.choice} />
      </Section>
      <Section id="actions" title="Actions" wide>
        <ActionTable page={page} done={may ? (action) => <DoneForm {...shared} action={action} /> : null} back={back} />
        {may ? <ActionForm {...shared} causes={page.causes} /> : null}
      </Section>
      <SignSection page={page} sign={sign} />
      <LiveRefresh site={head.site.key} what={['incidents']} />
    </IncidentFrame>
  );
}
