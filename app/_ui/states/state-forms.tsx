'use client';

import type { Custom } from '#core/units/shown';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { LastingField } from './lasting-field';
import { NoteField } from './note-field';
import { ProofFields } from './proof-fields';
import { proofSaid } from './proof-words';
import { type StateChoiceView, type StateLineView, stateName } from './state-view';

const LABELS = { lasts: 'How long', unit: 'Unit', note: 'What you say', state: 'State' };

/** What is worth saying when a state begins. */
const NOTES: Partial<Record<StateChoiceView['state'], string>> = {
  treatment: 'Drug, batch, strength, dose and volume of water, and who prescribed it',
  'water-change': 'What the new water read: temperature, salinity, pH, oxidant',
  maintenance: 'What is worked on, and what is isolated',
  'ozone-work': 'What is worked on, and what is isolated',
};

/** The system whose state it is. */
export interface StatePlace {
  site: string;
  system: string;
}

/** Puts the system into a state. */
export function BeginForm({
  place,
  choice,
  begin,
}: {
  place: StatePlace;
  choice: StateChoiceView;
  begin: FormAction<unknown>;
}) {
  const name = stateName(choice.state).toLowerCase();
  return (
    <KeptForm
      action={begin}
      hidden={{ ...place, state: choice.state }}
      ids={{ entry: choice.entry }}
      labels={LABELS}
      button={`Begin ${name}`}
      done="It is in force from now."
    >
      <LastingField title="It is meant to last" minutes={choice.lastsMin} />
      <NoteField title={NOTES[choice.state] ?? 'Note'} needed={false} />
    </KeptForm>
  );
}

/** Puts the end of a state off. */
export function PutOffForm({
  place,
  line,
  putOff,
}: {
  place: StatePlace;
  line: StateLineView;
  putOff: FormAction<unknown>;
}) {
  return (
    <KeptForm
      action={putOff}
      hidden={{ ...place, run: line.run }}
      ids={{ entry: line.entries.putOff }}
      labels={LABELS}
      button="Put the end off"
      done="The end is put off."
    >
      <LastingField title="From now it still lasts" minutes={15} />
      <NoteField title="Why" needed />
    </KeptForm>
  );
}

/** Ends a state. */
export function EndForm({
  place,
  line,
  end,
  units,
  zone,
}: {
  place: StatePlace;
  line: StateLineView;
  end: FormAction<unknown>;
  units: Custom;
  zone: string;
}) {
  const proofs = Object.fromEntries(line.proofs.map(({ proof }) => [`proof.${proof.key}`, proofSaid(proof)]));
  return (
    <KeptForm
      action={end}
      hidden={{ ...place, run: line.run }}
      ids={{ entry: line.entries.end }}
      labels={{ ...LABELS, ...proofs, note: 'What you saw' }}
      button={line.isOver ? 'I have looked' : `End ${stateName(line.state).toLowerCase()}`}
      done="It is ended."
    >
      <ProofFields proofs={line.proofs} units={units} zone={zone} />
      <NoteField title="What you saw" needed={line.hasHandsIn} />
    </KeptForm>
  );
}

/** A lead lets a treatment go on for another day. */
export function AuthoriseForm({
  place,
  line,
  authorise,
}: {
  place: StatePlace;
  line: StateLineView;
  authorise: FormAction<unknown>;
}) {
  return (
    <KeptForm
      action={authorise}
      hidden={{ ...place, run: line.run }}
      ids={{ entry: line.entries.authorise }}
      labels={LABELS}
      button="Let it go on"
      done="It goes on for another day."
    >
      <NoteField title="Animals, oxygen and ammonia, as you saw them" needed={false} />
    </KeptForm>
  );
}
