'use client';

import { useId, useState } from 'react';
import { NOTICE_KINDS, noticeWords } from '#core/notices/kinds';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import { NoteField } from './note-field';

const LABELS = {
  kind: 'Kind of work',
  what: 'Who, and where',
  todo: 'What to do',
  from: 'Begins',
  until: 'Ends',
  note: 'Note',
};

interface Props {
  site: string;
  entry: string;
  systems: readonly { key: string; name: string }[];
  add: FormAction<unknown>;
}

/** Gives notice of work by others. What to do begins with what is usual for its kind. */
export function NoticeForm({ site, entry, systems, add }: Props) {
  const id = useId();
  const [kind, setKind] = useState<string>(NOTICE_KINDS[0]);
  return (
    <KeptForm
      action={add}
      hidden={{ site }}
      ids={{ entry }}
      labels={LABELS}
      button="Give notice"
      done="It stands here and on the handover until its end."
    >
      <label htmlFor={`${id}k`}>
        Kind of work
        <select id={`${id}k`} name="kind" value={kind} onChange={(event) => setKind(event.target.value)}>
          {NOTICE_KINDS.map((one) => (
            <option key={one} value={one}>
              {noticeWords(one).name}
            </option>
          ))}
        </select>
      </label>
      <label htmlFor={`${id}w`}>
        Who, and where
        <input id={`${id}w`} name="what" maxLength={500} required />
      </label>
      <SystemField id={`${id}s`} systems={systems} />
      <label htmlFor={`${id}t`}>
        What to do
        <textarea
          key={kind}
          id={`${id}t`}
          name="todo"
          rows={4}
          maxLength={2000}
          defaultValue={noticeWords(kind).todo}
          required
        />
      </label>
      <TimeFields id={id} />
    </KeptForm>
  );
}

function SystemField({ id, systems }: { id: string; systems: Props['systems'] }) {
  return (
    <label htmlFor={id}>
      Which system it reaches
      <select id={id} name="system">
        <option value="">all of them</option>
        {systems.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function TimeFields({ id }: { id: string }) {
  return (
    <>
      <label htmlFor={`${id}f`}>
        Begins, by the clock of the site
        <input id={`${id}f`} name="from" type="datetime-local" required />
      </label>
      <label htmlFor={`${id}u`}>
        Ends
        <input id={`${id}u`} name="until" type="datetime-local" required />
      </label>
    </>
  );
}

/** Says that it is over before its time. */
export function EndNoticeForm({ site, notice, end }: { site: string; notice: string; end: FormAction<unknown> }) {
  return (
    <KeptForm action={end} hidden={{ site, notice }} labels={LABELS} button="It is over" done="It is over.">
      <NoteField title="Note" needed={false} />
    </KeptForm>
  );
}
