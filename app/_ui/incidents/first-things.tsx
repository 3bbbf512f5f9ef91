import { type Bodies, STEPS, type StepName } from '#core/incidents/incident';
import { STEP_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { TextField } from '../safeguards/fields';
import { EntryForm } from './entry-form';
import cautions from './cautions.json';
import type { HeadView, StoryView } from './incident-view';
import style from './incidents.module.css';
import { When } from './when';

/** How many steps come before the samples; the others keep the evidence. */
const AT_ONCE = 4;

interface StepsProps {
  head: HeadView;
  story: readonly StoryView[];
  ids: Readonly<Record<string, string>>;
  log: FormAction<unknown>;
}

/** What is done at once, in its order: people, then what failed, then air and dosing. None waits for the one before. */
export function FirstThings(props: StepsProps) {
  return (
    <Section
      id="first"
      title="First things"
      note="In this order. Press when it is so: the time is kept. Nothing here waits for anything else."
    >
      <StepList {...props} steps={STEPS.slice(0, AT_ONCE)} />
    </Section>
  );
}

/** What is kept as evidence, before it is cleared away. */
export function EvidenceSteps(props: StepsProps) {
  return (
    <Section id="evidence" title="Keep the evidence" note="Before anything is cleaned, mended or thrown away.">
      <StepList {...props} steps={STEPS.slice(AT_ONCE)} />
    </Section>
  );
}

function StepList({ steps, head, story, ids, log }: StepsProps & { steps: readonly StepName[] }) {
  const done = (step: StepName) =>
    story.findLast(({ entry, isSuperseded }) => entry.kind === 'step' && entry.body?.step === step && !isSuperseded);
  return (
    <ol className={style.steps}>
      {steps.map((step) => (
        <Step key={step} step={step} head={head} done={done(step)} id={ids[step]} log={log} />
      ))}
    </ol>
  );
}

interface StepProps {
  step: StepName;
  head: HeadView;
  done: StoryView | undefined;
  id: string | undefined;
  log: FormAction<unknown>;
}

function Step({ step, head, done, id, log }: StepProps) {
  return (
    <li>
      <span className={style.time}>
        {done ? <When atMs={done.entry.atMs} zone={head.site.zone} /> : 'not recorded yet'}
      </span>
      <div className={style.step}>
        {done ? <Done step={step} done={done} /> : <h3>{STEP_WORDS[step]}</h3>}
        {done ? (
          <Fold title="What to mind">
            <Cautions step={step} />
          </Fold>
        ) : (
          <Cautions step={step} />
        )}
        {!done && head.mayLog ? <StepForms step={step} head={head} id={id} log={log} /> : null}
      </div>
    </li>
  );
}

function Cautions({ step }: { step: StepName }) {
  return (
    <ul className={style.caution}>
      {cautions.steps[step].map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}

function Done({ step, done: { entry, who } }: { step: StepName; done: StoryView }) {
  const { notDone, note } = (entry.body ?? {}) as Partial<Bodies['step']>;
  return (
    <h3>
      {STEP_WORDS[step]}: {notDone === undefined ? 'done' : `not done, because ${notDone}`}
      <span className={style.small}>
        {' '}
        {who.name}
        {note ? `. ${note}` : ''}
      </span>
    </h3>
  );
}

function StepForms({ step, head, id, log }: Omit<StepProps, 'done'>) {
  const hidden = { kind: 'step', step };
  return (
    <>
      <EntryForm action={log} head={head} id={id} hidden={hidden} button={STEP_WORDS[step]} done="Recorded." />
      <Fold title="Not done, because …">
        <EntryForm
          action={log}
          head={head}
          id={id}
          hidden={hidden}
          labels={{ notDone: 'Why not' }}
          button="Record why not"
          done="Recorded."
        >
          <TextField name="notDone" title="Why not" rows={2} />
        </EntryForm>
      </Fold>
    </>
  );
}
