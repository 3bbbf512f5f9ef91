import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { Section } from '../frame/section';
import { momentSaid } from '../words/moment';
import { Takeable, TakeBack, Taken } from '../rounds/take-back';
import { SecondForm } from './second-form';
import type { SiteOfStates } from './state-view';
import style from './states.module.css';

/** A second signature that is wanted, or that was given lately. Instants are UTC, ISO. */
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
  signed: { at: string; by: string; note: string } | null;
  taken: { at: string; by: string; reason: string } | null;
}

interface Props {
  site: SiteOfStates;
  seconds: readonly SecondView[];
  /** For those who may; null for others. */
  sign: FormAction<unknown> | null;
  takeBack: FormAction<unknown> | null;
}

/** What a second person has to look at and sign, and what one found right lately. */
export function SecondsSection({ site, seconds, sign, takeBack }: Props) {
  if (seconds.length === 0) return null;
  const signed = seconds.filter((one) => one.signed !== null);
  const wanted = seconds.filter((one) => one.signed === null);
  return (
    <Section
      id="seconds"
      title={wanted.length > 0 ? 'Wants a second signature' : 'Second signatures'}
      note="Somebody else looks, and signs what they saw."
    >
      {wanted.map((one) => (
        <article key={one.asked} className={style.state}>
          <Done site={site} one={one} />
          {one.objected ? (
            <Objected site={site} asked={one.asked} objected={one.objected} taken={one.taken} takeBack={takeBack} />
          ) : (
            <Wanted site={site} one={one} sign={sign} />
          )}
        </article>
      ))}
      {signed.length > 0 ? (
        <Fold title={`Signed by a second in the past week: ${signed.length}`}>
          {signed.toReversed().map((one) => (
            <article key={one.asked} className={style.state}>
              <Done site={site} one={one} />
              <Signed site={site} one={one} takeBack={takeBack} />
            </article>
          ))}
        </Fold>
      ) : null}
    </Section>
  );
}

/** What was done, by whom. */
function Done({ site, one: { title, system, by, at, note } }: { site: SiteOfStates; one: SecondView }) {
  return (
    <>
      <h3>
        {title}
        {system === null ? null : `, ${system}`}
      </h3>
      <p>
        Done by {by} {momentSaid(at, site.zone)}.{note ? ` “${note}”` : ''}
      </p>
    </>
  );
}

/** Who found it right; or that this was taken back. */
function Signed({ site, one, takeBack }: Pick<Props, 'site' | 'takeBack'> & { one: SecondView }) {
  const { asked, signed, taken } = one;
  if (signed === null) return null;
  const said = `Found right by ${signed.by} ${momentSaid(signed.at, site.zone)}: “${signed.note}”`;
  return <Takeable {...{ site, said, taken, takeBack }} what="second-signature" about={asked} />;
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
