'use client';

import type { OwnLine, SheetLine } from '#core/rounds/round-sheet';
import style from './sheets.module.css';

interface OwnFieldsProps {
  line: OwnLine;
  change: (line: SheetLine) => void;
}

/** The fields of a line of the sheet's own. */
export function OwnFields({ line, change }: OwnFieldsProps) {
  return (
    <>
      <label>
        What is looked at
        <input
          value={line.what}
          maxLength={200}
          required
          onChange={({ target }) => change({ ...line, what: target.value })}
        />
      </label>
      <MayBeEmpty
        title="Why it matters (may stay empty)"
        value={line.why}
        change={(text) => {
          const { why: _, ...rest } = line;
          change({ ...rest, ...(text !== '' && { why: text }) });
        }}
      />
      {line.kind === 'doses' ? (
        <MayBeEmpty
          title="What one dose is (may stay empty)"
          value={line.dose}
          change={(text) => {
            const { dose: _, ...rest } = line;
            change({ ...rest, ...(text !== '' && { dose: text }) });
          }}
        />
      ) : null}
      {line.kind === 'figure' ? (
        <label>
          Unit
          <input
            value={line.unit}
            maxLength={40}
            required
            onChange={({ target }) => change({ ...line, unit: target.value })}
          />
        </label>
      ) : null}
      {line.kind === 'choice' ? <Options line={line} change={change} /> : null}
    </>
  );
}

interface MayBeEmptyProps {
  title: string;
  value: string | undefined;
  change: (text: string) => void;
}

function MayBeEmpty({ title, value, change }: MayBeEmptyProps) {
  return (
    <label>
      {title}
      <input value={value ?? ''} maxLength={200} onChange={({ target }) => change(target.value)} />
    </label>
  );
}

type Choice = Extract<OwnLine, { kind: 'choice' }>;

function Options({ line, change }: { line: Choice; change: (line: SheetLine) => void }) {
  const { options } = line;
  const set = (next: Choice['options']) => change({ ...line, options: next });
  return (
    <>
      {options.map((option, index) => (
        <div key={option.key} className={style.row}>
          <label>
            Word {index + 1}
            <input
              value={option.name}
              maxLength={80}
              required
              onChange={({ target }) =>
                set(options.map((one, at) => (at === index ? { ...one, name: target.value } : one)))
              }
            />
          </label>
          <label className={style.tick}>
            <input
              type="checkbox"
              checked={option.usual}
              onChange={({ target }) =>
                set(options.map((one, at) => (at === index ? { ...one, usual: target.checked } : one)))
              }
            />
            usual
          </label>
        </div>
      ))}
      <div className={style.row}>
        <button type="button" onClick={() => set([...options, { key: freeKey(options), name: '', usual: false }])}>
          Another word
        </button>
        {options.length > 2 ? (
          <button type="button" onClick={() => set(options.slice(0, -1))}>
            Leave out the last word
          </button>
        ) : null}
      </div>
    </>
  );
}

/** A key that no other of a list has: entries hang on keys, so a word may be changed and stay the same one. */
export function freeKey(taken: readonly { key: string }[], stem = 'word'): string {
  let number = taken.length + 1;
  while (taken.some(({ key }) => key === `${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}
