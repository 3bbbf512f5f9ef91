'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { NoteField } from '../states/note-field';

const LABELS = {
  note: 'Note',
  email: 'E-mail address',
  password: 'Password',
  system: 'System',
  what: 'Which animals',
  why: 'Why',
  days: 'Days',
};

/** Hands the site over as it stands on the page. */
export function GiveForm({
  site,
  entry,
  print,
  give,
}: {
  site: string;
  entry: string;
  print: string;
  give: FormAction<unknown>;
}) {
  return (
    <KeptForm
      action={give}
      hidden={{ site, print }}
      ids={{ entry }}
      labels={LABELS}
      button="I hand over"
      done="It is handed over, and waits for whoever takes it."
    >
      <NoteField title="What else the next one has to know" needed={false} />
    </KeptForm>
  );
}

/** Takes the site over, on a session of one's own. */
export function TakeForm({ site, handover, take }: { site: string; handover: string; take: FormAction<unknown> }) {
  return (
    <KeptForm
      action={take}
      hidden={{ site, handover }}
      labels={LABELS}
      button="I have read it back and take it"
      done="You have the site."
    >
      <NoteField title="Note" needed={false} />
    </KeptForm>
  );
}

/** Takes it on the device of whoever gave it. */
export function TakeHereForm({ site, handover, take }: { site: string; handover: string; take: FormAction<unknown> }) {
  const id = useId();
  return (
    <KeptForm
      action={take}
      hidden={{ site, handover }}
      labels={LABELS}
      button="I have read it back and take it"
      done="It is taken."
    >
      <label htmlFor={`${id}e`}>
        E-mail address of whoever takes it
        <input id={`${id}e`} name="email" type="email" autoComplete="off" required />
      </label>
      <label htmlFor={`${id}p`}>
        Their password
        <input id={`${id}p`} name="password" type="password" autoComplete="off" required />
      </label>
      <NoteField title="Note" needed={false} />
    </KeptForm>
  );
}

/** Puts animals under watch. */
export function WatchForm({
  site,
  entry,
  systems,
  watch,
}: {
  site: string;
  entry: string;
  systems: readonly { key: string; name: string }[];
  watch: FormAction<unknown>;
}) {
  const id = useId();
  return (
    <KeptForm
      action={watch}
      hidden={{ site }}
      ids={{ entry }}
      labels={LABELS}
      button="Put under watch"
      done="It stands on this page until then."
    >
      <label htmlFor={`${id}s`}>
        System
        <select id={`${id}s`} name="system" required>
          {systems.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label htmlFor={`${id}a`}>
        Which animals
        <input id={`${id}a`} name="what" maxLength={500} required />
      </label>
      <label htmlFor={`${id}w`}>
        Why, and what to look for
        <textarea id={`${id}w`} name="why" rows={2} maxLength={500} required />
      </label>
      <label htmlFor={`${id}d`}>
        For how many days
        <input id={`${id}d`} name="days" type="number" inputMode="numeric" min="1" max="31" defaultValue={3} required />
      </label>
    </KeptForm>
  );
}

/** Ends a watch. */
export function EndWatchForm({ site, watch, end }: { site: string; watch: string; end: FormAction<unknown> }) {
  return (
    <KeptForm action={end} hidden={{ site, watch }} labels={LABELS} button="End the watch" done="The watch is over.">
      <NoteField title="How it went" needed />
    </KeptForm>
  );
}
