import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { siteAddress } from '../frame/site-address';
import { lasting } from '../words/lasting';
import { CaseForm } from './case-form';
import type { HeadView } from './incident-view';
import type { ChoiceView } from './investigation-view';

interface ComparedProps {
  head: HeadView;
  choice: ChoiceView;
}

/** What happened beside what the review had reckoned for the same fault; and the form that chooses the fault. */
export function CaseCompared({
  head,
  choice,
  ids,
  investigate,
}: ComparedProps & { ids: Readonly<Record<string, string>>; investigate: FormAction<unknown> }) {
  return (
    <>
      <ComparedSaid head={head} choice={choice} />
      {head.mayInvestigate && choice.cases.length > 0 ? (
        <CaseForm head={head} id={ids.case} choice={choice} investigate={investigate} />
      ) : null}
    </>
  );
}

/** The comparison in sentences. */
export function ComparedSaid({ head, choice: { cases, compared } }: ComparedProps) {
  const { site, system } = head;
  if (!system) return <p>A fault case belongs to one system: this incident is of the whole site.</p>;
  if (!compared)
    return cases.length === 0 ? (
      <p>The review of {system.name} is not there at the moment, or knows no case that harms animals.</p>
    ) : (
      <p>No fault case is chosen yet.</p>
    );
  const { title, modelS, foundS } = compared;
  return (
    <>
      <p>
        <Link href={siteAddress(site.key, 'systems', system.key, 'cases', compared.id)}>{title}</Link>. By the model, as
        it is described today, animals are harmed {modelSaid(modelS.claimed)} with every safeguard as claimed, and{' '}
        {modelSaid(modelS.tested)} with those that were tested.
      </p>
      <p>
        {foundS === null
          ? 'When the fault began, or the first loss, is not recorded: there is nothing to hold it against.'
          : `Here the first animals were lost ${foundSaid(foundS)} after the fault began. Far from the model means that the claimed cause does not explain it by itself, or that the description is not true.`}
      </p>
    </>
  );
}

function modelSaid(seconds: number | null): string {
  return seconds === null ? 'at no time within seven days' : `after ${lasting(seconds)}`;
}

function foundSaid([least, most]: [number, number]): string {
  return Math.abs(most - least) < 60 ? lasting(most) : `between ${lasting(least)} and ${lasting(most)}`;
}
