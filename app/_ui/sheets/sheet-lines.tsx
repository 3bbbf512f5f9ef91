import type { SheetView } from './sheet-views';
import { KIND_WORDS } from './sheet-words';
import style from './sheets.module.css';

/** The lines of a sheet, to read. */
export function SheetLines({ page: { sheet, places } }: { page: SheetView }) {
  const checks = new Map(
    places.flatMap((place) => place.checks.map((check) => [check.key, { check, place }] as const)),
  );
  return (
    <ol className={style.lines}>
      {sheet.lines.map((line) => {
        const found = checks.get(line.key);
        const kind = line.kind === 'described' ? found?.check.kind : line.kind;
        return (
          <li key={line.key}>
            {line.what ?? found?.check.what ?? line.key}
            <span className={style.about}>
              {[found?.place.name, kind && KIND_WORDS[kind], line.secondSignature ? 'a second signature' : undefined]
                .filter((part) => part !== undefined)
                .join(', ')}
            </span>
          </li>
        );
      })}
    </ol>
  );
}
