import type { Begun } from '#core/states/state-end';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { KeptForm } from '../safeguards/kept-form';
import { momentSaid } from '../words/moment';
import { Takeable } from '../rounds/take-back';
import { NoteField } from './note-field';
import { type SiteOfStates, stateName } from './state-view';
import style from './states.module.css';

/** What is watched after a state. Instants are UTC, ISO. */
export interface WatchView {
  run: string;
  system: { key: string; name: string };
  state: Begun;
  endedAt: string;
  title: string;
  look: string;
  source: string;
  until: string;
  nextLook: string | null;
  isLate: boolean;
  looks: {
    id: string;
    at: string;
    by: string;
    note: string | null;
    taken: { at: string; by: string; reason: string } | null;
  }[];
  entry: string;
}

interface Props {
  site: SiteOfStates;
  watches: readonly WatchView[];
  /** For those who may; null for others. */
  look: FormAction<unknown> | null;
  takeBack: FormAction<unknown> | null;
}

/** What is watched after states that ended, what is due first. */
export function WatchesSection({ site, watches, look, takeBack }: Props) {
  if (watches.length === 0) return null;
  return (
    <Section
      id="watched"
      title="Watched since they ended"
      note="What a state leaves behind shows late: each is looked at again until then."
    >
      {watches.map((watch) => (
        <article key={`${watch.run} ${watch.title}`} className={style.state}>
          <h3>
            {watch.system.name}, {watch.title}
          </h3>
          <p>
            {stateName(watch.state)} ended {momentSaid(watch.endedAt, site.zone)}; watched until{' '}
            {momentSaid(watch.until, site.zone)}. <NextLook watch={watch} zone={site.zone} />
          </p>
          <p className={style.small}>
            Look at: {watch.look} From: {watch.source}
          </p>
          {watch.looks.map((one) => (
            <Look key={one.id} one={one} site={site} takeBack={takeBack} />
          ))}
          {look ? (
            <Fold title="I have looked" open={watch.isLate}>
              <KeptForm
                action={look}
                hidden={{ site: site.key, system: watch.system.key, run: watch.run }}
                ids={{ entry: watch.entry }}
                labels={{ note: 'What you saw' }}
                button="Keep it"
                done="It is kept."
              >
                <NoteField title="What you saw" needed />
              </KeptForm>
            </Fold>
          ) : null}
        </article>
      ))}
    </Section>
  );
}

/** A look, or one that was taken back. */
function Look({
  one: { id, at, by, note, taken },
  site,
  takeBack,
}: Pick<Props, 'site' | 'takeBack'> & { one: WatchView['looks'][number] }) {
  const said = `Looked ${momentSaid(at, site.zone)} by ${by}: ${note}`;
  return (
    <div className={style.small}>
      <Takeable {...{ site, said, taken, takeBack }} what="state-look" about={id} />
    </div>
  );
}

function NextLook({ watch: { nextLook, isLate }, zone }: { watch: WatchView; zone: string }) {
  if (nextLook === null) return <>No further look is due.</>;
  if (!isLate) return <>The next look is due {momentSaid(nextLook, zone)}.</>;
  return (
    <>
      <span aria-hidden="true" className={style.mark}>
        ▲
      </span>{' '}
      <strong>Look late</strong>: it was due {momentSaid(nextLook, zone)}.
    </>
  );
}
