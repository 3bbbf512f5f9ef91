'use client';

import Link from '../frame/link';
import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { answerOf, type FormAction, type FormAnswer } from '../form/answer';
import { LineField } from '../safeguards/fields';
import form from '../safeguards/safeguards.module.css';
import { Refused } from './entry-form';
import { ChoiceField, MomentField } from './fields';
import { incidentAddress, type SiteView } from './incident-view';
import style from './incidents.module.css';

/** What an incident is opened with. */
export interface NewView {
  site: SiteView;
  systems: { key: string; name: string }[];
  alarm: { id: string; name: string; system: string; raisedMs: number } | null;
  system: string;
  title: string;
  began: string;
  now: string;
  entry: string;
}

/** Where it was opened. */
interface Opened {
  site: string;
  number: number;
}

const LABELS: Readonly<Record<string, string>> = {
  title: 'What happened, in a few words',
  system: 'System',
  began: 'It began, at the earliest',
  latest: 'and at the latest',
};

/** Opens an incident, and leads to it. */
export function OpenForm({ page, open }: { page: NewView; open: FormAction<Opened> }) {
  const [answer, setAnswer] = useState<FormAnswer<Opened> | null>(null);
  const [isBusy, setBusy] = useState(false);
  const router = useRouter();
  const to = answer?.ok ? incidentAddress({ site: page.site, number: answer.value.number }) : null;
  useEffect(() => {
    if (to !== null) router.push(to);
  }, [to, router]);
  const send = async (fields: FormData) => {
    setBusy(true);
    setAnswer(await answerOf(open, fields));
    setBusy(false);
  };
  return (
    <form
      className={`${form.form} ${style.form}`}
      onSubmit={(event) => {
        event.preventDefault();
        void send(new FormData(event.currentTarget));
      }}
    >
      <input type="hidden" name="site" value={page.site.key} />
      <input type="hidden" name="entry" value={page.entry} />
      {page.alarm ? <input type="hidden" name="alarm" value={page.alarm.id} /> : null}
      <LineField name="title" title={LABELS.title ?? ''} start={page.title} />
      <ChoiceField name="system" title={LABELS.system ?? ''} start={page.system} options={systemsIn(page)} />
      <MomentField
        name="began"
        title={LABELS.began ?? ''}
        start={page.began}
        hint="As far as known. Leave both empty when nobody can say yet."
      />
      <MomentField name="latest" title={LABELS.latest ?? ''} />
      <button type="submit" disabled={isBusy || to !== null}>
        Open the incident
      </button>
      <div role="status">
        {to === null ? null : (
          <p>
            It is open: <Link href={to}>go to what is done first</Link>.
          </p>
        )}
        {answer && !answer.ok ? <Refused answer={answer} labels={LABELS} /> : null}
      </div>
    </form>
  );
}

function systemsIn({ systems }: NewView): Record<string, string> {
  return { '': 'the whole site', ...Object.fromEntries(systems.map(({ key, name }) => [key, name])) };
}
