import type { FormAction } from '../form/answer';
import { PersonForm } from '../sign-in/person-form';
import type { SheetsView } from './sheet-views';
import style from './sheets.module.css';

interface StartsProps {
  page: SheetsView;
  start: FormAction<unknown>;
}

/** Begins the sheets of one system, or of what belongs to the whole site. */
export function Starts({ page: { site, systems }, start }: StartsProps) {
  return (
    <div className={style.editor}>
      <PersonForm
        send={start}
        look="second"
        hidden={{ site: site.key }}
        button="Draft its sheets"
        done="They stand among the drafts."
      >
        <label>
          Of which system
          <select name="system">
            {systems.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
            <option value="">what belongs to the whole site</option>
          </select>
        </label>
      </PersonForm>
    </div>
  );
}
