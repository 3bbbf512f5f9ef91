import type { FormAction } from '../form/answer';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { siteAddress } from '../frame/site-address';
import { momentSaid } from '../words/moment';
import { LeaveForm, SwapForm } from './ask-forms';
import { ChangeAnswers } from './change-answers';
import { ChangeEffect } from './change-effect';
import { CHANGE_WORDS, type ChangesView, type ChangeView, changeSaid } from './change-view';
import style from './rota.module.css';

interface ChangesBodyProps {
  page: ChangesView;
  leave: FormAction<unknown>;
  swap: FormAction<unknown>;
  answer: FormAction<unknown>;
}

/** Leave and swaps: what waits for an answer, what may be asked for, and what has come of the others. */
export function ChangesBody({ page, leave, swap, answer }: ChangesBodyProps) {
  const { site, open, past, mayAsk, offered } = page;
  return (
    <Page
      title="Leave and swaps"
      over={[
        { href: '/', name: 'Systems' },
        { href: siteAddress(site.key), name: site.name },
        { href: siteAddress(site.key, 'rota'), name: 'Rota' },
      ]}
      lead={<p>Nothing changes who is called before it is approved. Times are those of {site.zone}.</p>}
    >
      <Section id="open" title="Waiting for an answer">
        {open.length === 0 ? <p>Nothing waits for an answer.</p> : null}
        <Changes changes={open} site={site} answer={answer} />
      </Section>
      {mayAsk ? (
        <>
          <Section id="ask-leave" title="Ask for leave">
            <LeaveForm page={page} ask={leave} />
          </Section>
          <Section
            id="ask-swap"
            title="Ask for a swap"
            note="One turn goes to somebody else, once they have agreed and a lead has approved."
          >
            {offered.gives.length === 0 ? (
              <p>You have no turn in the coming four weeks.</p>
            ) : (
              <SwapForm page={page} ask={swap} />
            )}
          </Section>
        </>
      ) : (
        <Section id="ask-leave" title="Ask for leave or a swap">
          <p>
            Only for whoever is somebody of this rota, and for leads. An administrator of the site says under People who
            you are on it.
          </p>
        </Section>
      )}
      <Section id="past" title="Decided">
        {past.length === 0 ? <p>Nothing was decided in the last four weeks.</p> : null}
        <Changes changes={past} site={site} answer={answer} />
      </Section>
    </Page>
  );
}

interface ChangesProps {
  changes: ChangeView[];
  site: ChangesView['site'];
  answer: FormAction<unknown>;
}

function Changes({ changes, site, answer }: ChangesProps) {
  if (changes.length === 0) return null;
  return (
    <ol className={style.changes}>
      {changes.map((change) => (
        <li key={change.id}>
          <p>
            <strong>{changeSaid(change, site.zone)}</strong>: {CHANGE_WORDS[change.state]}.
            <span className={style.about}>{storySaid(change, site.zone)}</span>
          </p>
          {change.effect ? <ChangeEffect effect={change.effect} zone={site.zone} /> : null}
          {change.isOwn ? <p>It is of your own duties: another lead approves it.</p> : null}
          {change.may.length > 0 ? <ChangeAnswers site={site.key} change={change} answer={answer} /> : null}
        </li>
      ))}
    </ol>
  );
}

/** Who did what with it, in order. */
function storySaid({ askedBy, askedAt, why, events }: ChangeView, zone: string): string {
  const asked = `Asked for by ${askedBy}, ${momentSaid(askedAt, zone)}${why ? `: ${why}` : ''}`;
  const came = events.map(({ kind, by, at }) => `${kind.replace('-', ' ')} by ${by}, ${momentSaid(at, zone)}`);
  return `${[asked, ...came].join('; ')}.`;
}
