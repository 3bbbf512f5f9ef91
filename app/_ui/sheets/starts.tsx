import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import type { SheetsView } from './sheet-views';

interface StartsProps {
  page: SheetsView;
  start: FormAction<unknown>;
}

/** A button for each system, and one for what belongs to the whole site. */
export function Starts({ page: { site, systems }, start }: StartsProps) {
  return (
    <>
      {systems.map(({ key, name }) => (
        <PersonForm
          key={key}
          send={start}
          look="second"
          hidden={{ site: site.key, system: key }}
          button={`Draft the sheets of ${name}`}
          done="They stand among the drafts."
        />
      ))}
      <PersonForm
        send={start}
        look="second"
        hidden={{ site: site.key }}
        button="Draft those of the whole site"
        done="They stand among the drafts."
      />
    </>
  );
}
