import { DELIMITERS, type Delimiter, ENCODINGS, type Encoding } from '#core/readings/file/layout';
import { ChoiceField } from './choice-field';
import type { LookView } from './look-view';
import type { ReadAs } from './use-take-in';
import style from './file.module.css';

const ENCODING_NAMES: Record<Encoding, string> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16, little end first',
  'utf-16be': 'UTF-16, big end first',
  'windows-1252': 'Windows-1252 or Latin-1',
};
const DELIMITER_NAMES: Record<Delimiter, string> = {
  tab: 'a tab',
  ';': 'a semicolon',
  '|': 'a bar',
  ',': 'a comma',
  blanks: 'blanks',
  objects: 'it is JSON',
};

interface WrittenFieldsProps {
  /** Null when nothing could be read yet. */
  seen: LookView | null;
  readAs: (as: ReadAs) => void;
  isBusy: boolean;
}

/** How a file is written, where what was found out is wrong; and the layouts of files like it. */
export function WrittenFields({ seen, readAs, isBusy }: WrittenFieldsProps) {
  const given = seen ? { encoding: seen.draft.encoding, delimiter: seen.draft.delimiter } : {};
  const names = <T extends string>(list: readonly T[], called: Record<T, string>) =>
    list.map((one) => [one, called[one]] as const);
  const open = seen ? [] : ([['', 'to be found out']] as const);
  return (
    <details className={style.fold} open={seen === null}>
      <summary>How it is written, if letters or columns look wrong</summary>
      <div className={style.row}>
        <ChoiceField
          label="Letters"
          value={given.encoding ?? ''}
          options={[...open, ...names(ENCODINGS, ENCODING_NAMES)]}
          disabled={isBusy}
          choose={(encoding) => readAs({ ...given, encoding: encoding as Encoding })}
        />
        <ChoiceField
          label="Between two columns stands"
          value={given.delimiter ?? ''}
          options={[...open, ...names(DELIMITERS, DELIMITER_NAMES)]}
          disabled={isBusy}
          choose={(delimiter) => readAs({ ...given, delimiter: delimiter as Delimiter })}
        />
        {seen && seen.alike.length > 0 ? (
          <ChoiceField
            label="Read as the files of"
            value={seen.from?.id ?? ''}
            options={[['', 'none of them'], ...seen.alike.map(({ id, name }) => [id, name] as const)]}
            disabled={isBusy}
            choose={(layout) => (layout === '' ? undefined : readAs({ ...given, layout }))}
          />
        ) : null}
      </div>
    </details>
  );
}
