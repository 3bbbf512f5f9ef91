import type { LinkView } from './people-view';
import style from './people.module.css';

/** How a link goes to whom it is for; one that is not mailed is shown here and nowhere again. */
export function LinkNote({ link }: { link: LinkView | null }) {
  if (!link)
    return (
      <p>
        They have access elsewhere and sign in as they do already. Make sure with them that they do: if they know of no
        account, somebody else made it in their name.
      </p>
    );
  if (link.way === 'mail') return <p>The link is on its way to them by mail.</p>;
  return (
    <p>
      Give them this link. It works once, and is shown only now: <code className={style.address}>{link.address}</code>
    </p>
  );
}
