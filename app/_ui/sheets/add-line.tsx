'use client';

import type { OwnLine, SheetLine } from '#core/rounds/round-sheet';
import { useState } from 'react';
import { freeKey } from './own-fields';
import type { SheetView } from './sheet-views';
import { KIND_WORDS } from './sheet-words';
import style from './sheets.module.css';

interface AddLineProps {
  page: SheetView;
  lines: readonly SheetLine[];
  add: (lines: SheetLine[]) => void;
}

const OWN_KINDS = ['yes-no', 'figure', 'choice', 'text', 'photo', 'doses'] as const;

/** Adds lines that follow from the description, or one of the sheet's own. */
export function AddLine({ page, lines, add }: AddLineProps) {
  return (
    <>
      <AddDescribed page={page} lines={lines} add={add} />
      <AddOwn page={page} lines={lines} add={add} />
    </>
  );
}

function AddDescribed({ page, lines, add }: AddLineProps) {
  const [chosen, setChosen] = useState('');
  const has = new Set(lines.map(({ key }) => key));
  const offered = page.places
    .map((place) => ({ ...place, checks: place.checks.filter(({ key }) => !has.has(key)) }))
    .filter(({ checks }) => checks.length > 0);
  const isOffered = offered.some(({ checks }) => checks.some(({ key }) => key === chosen));
  if (offered.length === 0) return null;
  return (
    <div className={style.row}>
      <label>
        A line that follows from the description
        <select value={isOffered ? chosen : ''} onChange={({ target }) => setChosen(target.value)}>
          <option value="">choose one</option>
          {offered.map((place) => (
            <optgroup key={place.name} label={place.name}>
              {place.checks.map(({ key, what }) => (
                <option key={key} value={key}>
                  {what}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </label>
      <button type="button" disabled={!isOffered} onClick={() => add([{ kind: 'described', key: chosen }])}>
        Add it
      </button>
    </div>
  );
}

function AddOwn({ page, lines, add }: AddLineProps) {
  const [kind, setKind] = useState<OwnLine['kind']>('yes-no');
  const [at, setAt] = useState('');
  const [system, tank] = at.split(' ');
  const place = { ...(system ? { system } : {}), ...(tank ? { tank } : {}) };
  return (
    <div className={style.row}>
      <label>
        A line of its own
        <select
          value={kind}
          onChange={({ target }) => setKind(OWN_KINDS.find((one) => one === target.value) ?? 'yes-no')}
        >
          {OWN_KINDS.map((one) => (
            <option key={one} value={one}>
              {KIND_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <label>
        Looked at
        <select value={at} onChange={({ target }) => setAt(target.value)}>
          <option value="">with what belongs to the whole site</option>
          {page.places
            .filter(({ system: of }) => of !== null)
            .map(({ name, system: of, tank: its }) => (
              <option key={name} value={[of?.key, its].filter((part) => part !== undefined).join(' ')}>
                {name}
              </option>
            ))}
        </select>
      </label>
      <button type="button" onClick={() => add([ownLine(kind, freeKey(lines, 'own'), place)])}>
        Add a line of its own
      </button>
    </div>
  );
}

function ownLine(kind: OwnLine['kind'], key: string, place: { system?: string; tank?: string }): OwnLine {
  const base = { key, what: 'What is looked at', ...place };
  switch (kind) {
    case 'figure':
      return { ...base, kind, unit: 'bar' };
    case 'choice':
      return {
        ...base,
        kind,
        options: [
          { key: 'word-1', name: 'as usual', usual: true },
          { key: 'word-2', name: 'other', usual: false },
        ],
      };
    case 'doses':
    case 'photo':
    case 'text':
    case 'yes-no':
      return { ...base, kind };
  }
}
