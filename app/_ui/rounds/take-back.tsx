import type { TakenWhat } from '#core/rounds/taken-back';
import type { ReactNode } from 'react';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { KeptForm } from '../safeguards/kept-form';
import { momentSaid } from '../words/moment';
import { NoteField } from './note-field';

interface TakeBackProps {
  site: string;
  what: TakenWhat;
  /** Id of what is taken back. */
  about: string;
  takeBack: FormAction<unknown>;
  /** What is said once it is. */
  done?: string;
}

const DONE = 'It is taken back, and wanted again.';

/** Takes back what somebody said: it stays to be seen, and counts no longer. */
export function TakeBack({ site, what, about, takeBack, done = DONE }: TakeBackProps) {
  return (
    <Fold title="Take it back">
      <KeptForm
        key={about}
        action={takeBack}
        hidden={{ site, what, about }}
        labels={{ reason: 'Why' }}
        button="Take it back"
        done={done}
      >
        <NoteField name="reason" title="Why: what was said stays, struck through" isNeeded />
      </KeptForm>
    </Fold>
  );
}

interface TakenProps {
  taken: { at: string; by: string; reason: string };
  zone: string;
  children: ReactNode;
}

/** What was said and taken back since: struck through, with who took it back and why. */
export function Taken({ taken: { at, by, reason }, zone, children }: TakenProps) {
  return (
    <>
      <s>{children}</s> <span aria-hidden="true">✕</span> taken back by {by} {momentSaid(at, zone)}: {reason}
    </>
  );
}

interface TakeableProps extends Omit<TakeBackProps, 'site' | 'takeBack'> {
  site: { key: string; zone: string };
  said: string;
  /** Null while it counts. */
  taken: TakenProps['taken'] | null;
  /** For those who may; null for others. */
  takeBack: FormAction<unknown> | null;
}

/** What somebody said, and a way to take it back; or that it was. */
export function Takeable({ site, said, taken, takeBack, ...what }: TakeableProps) {
  return (
    <>
      <p>
        {taken ? (
          <Taken taken={taken} zone={site.zone}>
            {said}
          </Taken>
        ) : (
          said
        )}
      </p>
      {takeBack && !taken ? <TakeBack site={site.key} takeBack={takeBack} {...what} /> : null}
    </>
  );
}
