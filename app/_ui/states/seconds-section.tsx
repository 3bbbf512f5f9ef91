import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { momentSaid } from '../words/moment';
import { TakeBack, Taken } from '../rounds/take-back';
import { SecondForm } from './second-form';
import type { SiteOfStates } from './state-view';
import style from './states.module.css';

/** A second signature that is wanted, or that found something wrong. Instants are UTC, ISO. */
export interface SecondView {
  asked: string;
  title: string;
  look: string;
  system: string | null;
  at: string;
  by: string;
  note: string | null;
  isOwn: boolean;
  objected: { at: string; by: string; note: string } | null;
  taken: { at: string; by: string; reason: string } | null;
}

interface Props {
  site: SiteOfStates;
  seconds: readonly SecondView[];
  /** For those who may; null for others. */
  sign: FormAction<unknown> | null;
  takeBack: FormAction<unknown> | null;
}

/** What a second person has to look at and sign. */
export function SecondsSection({ site, seconds, sign, takeBack }: Props) {
  if (seconds.length === 0) return null;
  return (
    <Section id="seconds" title="Wants a second signature" note="Somebody else looks, and signs what they saw.">
      {seconds.map((one) => (
        <article key={one.asked} className={style.state}>
          <h3>
            {one.title}
            {one.system === null ? null : `, ${one.system}`}
          </h3>
          <p>
            Done by {one.by} {momentSaid(one.at, site.zone)}.{one.note ? ` “${one.note}”` : ''}
          </p>
          {one.objected ? (
            <Objected site={site} asked={one.asked} objected={one.objected} taken={one.taken} takeBack={takeBack} />
          ) : (
            <Wanted site={site} one={one} sign={sign} />
          )}
        </article>
      ))}
    </Section>
  );
}

interface ObjectedProps extends Pick<Props, 'site' | 'takeBack'>, Pick<SecondView, 'asked' | 'taken'> {
  objected: NonNullable<SecondView['objected']>;
}

/** Who found it not right; or that this was taken back. */
function Objected({ site, asked, objected, taken, takeBack }: ObjectedProps) {
  const said = `${objected.by} said ${momentSaid(objected.at, site.zone)}: “${objected.note}”`;
  if (taken)
    return (
      <p>
        <Taken taken={taken} zone={site.zone}>
          not right, {said}
        </Taken>
      </p>
    );
  return (
    <>
      <p>
        <span aria-hidden="true" className={style.mark}>
          ▲
        </span>{' '}
        <strong>not right</strong>, {said}
      </p>
      {takeBack ? <TakeBack site={site.key} what="second-signature" about={asked} takeBack={takeBack} /> : null}
    </>
  );
}

function Wanted({ site, one, sign }: { site: SiteOfStates; one: SecondView; sign: Props['sign'] }) {
  return (
    <>
      <p className={style.small}>Look at: {one.look}</p>
      {one.isOwn ? <p className={style.small}>You did this yourself, so somebody else signs.</p> : null}
      {sign && !one.isOwn ? (
        <Fold title="Sign as the second">
          <SecondForm site={site.key} asked={one.asked} sign={sign} />
        </Fold>
      ) : null}
    </>
  );
}
