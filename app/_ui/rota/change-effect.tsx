import type { ChangeView } from './change-view';
import { RestList } from './rest-list';
import { spanSaid } from './span-said';
import style from './rota.module.css';

/** Spans that are listed; the rest is counted. */
const MOST = 6;

/** What a change would leave, before it is approved: hours with nobody, hours without a competence, rest. */
export function ChangeEffect({ effect, zone }: { effect: NonNullable<ChangeView['effect']>; zone: string }) {
  const { nobody, nobodyMin, lacking, rest } = effect;
  if (nobody.length + lacking.length + rest.length === 0)
    return <p>It leaves no hour with nobody, no competence lacking, and no less rest than the rules looked at.</p>;
  return (
    <>
      {nobody.length > 0 ? (
        <>
          <p>
            <Mark /> <strong>It leaves {Math.round(nobodyMin / 6) / 10} hours that nobody answers</strong>, on site or
            on call:
          </p>
          <Spans spans={nobody} zone={zone} />
        </>
      ) : null}
      {lacking.map(({ name, spans }) => (
        <div key={name}>
          <p>
            <Mark /> <strong>Nobody who is on then may: {name}.</strong>
          </p>
          <Spans spans={spans} zone={zone} />
        </div>
      ))}
      {rest.length > 0 ? <RestList warnings={rest} zone={zone} /> : null}
    </>
  );
}

/** Stretches of time as a list. */
export function Spans({ spans, zone }: { spans: { from: number; to: number }[]; zone: string }) {
  return (
    <ul className={style.nobodyList}>
      {spans.slice(0, MOST).map((span) => (
        <li key={span.from}>{spanSaid(span, zone)}</li>
      ))}
      {spans.length > MOST ? <li>and {spans.length - MOST} more</li> : null}
    </ul>
  );
}

/** The mark of what is abnormal; its words stand beside it. */
export function Mark() {
  return (
    <span aria-hidden="true" className={style.mark}>
      ▲
    </span>
  );
}
