import { SIGNER_WORDS } from '#core/incidents/words';
import type { FormAction } from '../form/answer';
import { Section } from '../frame/section';
import style from './incidents.module.css';
import type { InvestigationView } from './investigation-view';
import { SignForm } from './sign-form';
import { When } from './when';

/** Who stands for the investigation: a lead and a manager, or a sole keeper; over which entries. */
export function SignSection({ page, sign }: { page: InvestigationView; sign: FormAction<unknown> }) {
  const { head, story, sha256, signers } = page;
  const given = story.filter(({ entry, isSuperseded }) => entry.kind === 'signature' && entry.body && !isSuperseded);
  const later = story.filter(({ isAfterSigning }) => isAfterSigning).length;
  return (
    <Section
      id="sign"
      title="Sign"
      note="A lead and a manager, two people, over the very same entries. Where there is nobody else, a sole keeper."
    >
      {given.length === 0 ? <p>Nobody has signed.</p> : null}
      <ul>
        {given.map(({ entry, who }) =>
          entry.kind === 'signature' && entry.body ? (
            <li key={entry.id}>
              {who.name} as {SIGNER_WORDS[entry.body.as]}, <When atMs={entry.atMs} zone={head.site.zone} />, over{' '}
              {entry.body.covers.length} entries.
              {head.state !== 'signed' && entry.body.sha256 !== sha256
                ? ' Something was written since: this signature does not count for it.'
                : ''}
              <span className={style.digest}>SHA-256 {entry.body.sha256}</span>
            </li>
          ) : null,
        )}
      </ul>
      {head.state === 'signed' ? (
        <p>
          It is signed. {later === 0 ? 'Nothing was added since.' : `Added since: ${later}, marked as such in the log.`}
        </p>
      ) : null}
      {head.state !== 'signed' && signers.length > 0 ? (
        <SignForm head={head} id={page.ids.sign} signers={signers} sha256={sha256} sign={sign} />
      ) : null}
    </Section>
  );
}
