'use client';

import type { Check, Range } from '#core/rounds/check';
import type { SheetLine } from '#core/rounds/round-sheet';
import { readingSymbol } from '#core/readings/figures';
import { OwnFields } from './own-fields';
import { RangeFields } from './range-fields';
import type { SheetView } from './sheet-views';
import { KIND_WORDS } from './sheet-words';
import style from './sheets.module.css';

interface LineEditorProps {
  page: SheetView;
  line: SheetLine;
  change: (line: SheetLine) => void;
  leaveOut: () => void;
  up: (() => void) | null;
  down: (() => void) | null;
}

/** One line of a sheet: its words, what is usual, who signs it as well, and its place among the others. */
export function LineEditor({ page, line, change, leaveOut, up, down }: LineEditorProps) {
  const check = line.kind === 'described' ? checkOf(page, line.key) : undefined;
  const name = line.what ?? check?.what ?? line.key;
  const { secondSignature, ...rest } = line;
  return (
    <li>
      <p>
        <strong>{name}</strong>
        <span className={style.about}>{aboutSaid(page, line, check)}</span>
      </p>
      {line.kind === 'described' ? (
        <label>
          In other words (left empty: as it follows from the description)
          <input
            value={line.what ?? ''}
            maxLength={200}
            placeholder={check?.what}
            onChange={({ target }) => {
              const { what: _, ...others } = line;
              change({ ...others, ...(target.value !== '' && { what: target.value }) });
            }}
          />
        </label>
      ) : (
        <OwnFields line={line} change={change} />
      )}
      <Usual line={line} check={check} change={change} />
      <label className={style.tick}>
        <input
          type="checkbox"
          checked={secondSignature ?? false}
          onChange={({ target }) => change({ ...rest, ...(target.checked && { secondSignature: true }) } as SheetLine)}
        />
        Somebody else signs this line as well
      </label>
      <div className={style.row}>
        <button type="button" disabled={up === null} onClick={() => up?.()} aria-label={`Up: ${name}`}>
          Up
        </button>
        <button type="button" disabled={down === null} onClick={() => down?.()} aria-label={`Down: ${name}`}>
          Down
        </button>
        <button type="button" onClick={leaveOut} aria-label={`Leave out: ${name}`}>
          Leave out
        </button>
      </div>
    </li>
  );
}

/** What is usual, of lines that ask for a number. */
function Usual({
  line,
  check,
  change,
}: {
  line: SheetLine;
  check: Check | undefined;
  change: LineEditorProps['change'];
}) {
  const unit = unitOf(line, check);
  if (unit === null) return null;
  const usual = 'usual' in line ? line.usual : undefined;
  return (
    <RangeFields
      usual={usual}
      unit={unit}
      change={(next: Range | undefined) => {
        const { usual: _, ...rest } = line as Extract<SheetLine, { usual?: Range }>;
        change({ ...rest, ...(next && { usual: next }) } as SheetLine);
      }}
    />
  );
}

/** Unit of what is usual; null for a line that asks for no number. */
function unitOf(line: SheetLine, check: Check | undefined): string | null {
  if (line.kind === 'figure') return line.unit;
  if (line.kind === 'doses') return 'doses a day';
  if (check?.kind === 'number') return readingSymbol(check.quantity, 'metric');
  return check?.kind === 'used' ? 'L a day' : null;
}

function checkOf({ places }: SheetView, key: string): Check | undefined {
  return places.flatMap(({ checks }) => checks).find((check) => check.key === key);
}

function aboutSaid({ places, systems }: SheetView, line: SheetLine, check: Check | undefined): string {
  if (line.kind === 'described') {
    const place = places.find(({ checks }) => checks.some(({ key }) => key === line.key));
    const due =
      check?.kind === 'calibration' && check.due !== undefined ? `, the last one counts until ${check.due}` : '';
    return check && place
      ? `${place.name}, ${KIND_WORDS[check.kind]}${due}`
      : 'its thing is no longer described: it falls away';
  }
  const system = systems.find(({ key }) => key === line.system);
  const tank = system?.tanks.find(({ key }) => key === line.tank);
  const place = [system?.name ?? 'the whole site', tank?.name].filter((name) => name !== undefined).join(', ');
  return `${place}, ${KIND_WORDS[line.kind]}`;
}
