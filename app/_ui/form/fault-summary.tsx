'use client';

import { useEffect, useRef } from 'react';
import type { Field, FieldFault } from '#core/forms/field';
import { idOfFault } from './form-state';
import style from './form.module.css';

interface FaultSummaryProps {
  said: string;
  faults: readonly FieldFault[];
  fields: readonly Field[];
}

/** Everything that is wrong, at the top, each leading to its field. It takes the focus when it comes. */
export function FaultSummary({ said, faults, fields }: FaultSummaryProps) {
  const top = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (faults.length > 0 || said !== '') top.current?.focus();
  }, [faults, said]);
  return (
    <div ref={top} tabIndex={-1} role="alert" className={style.summary}>
      <h2>{said}</h2>
      <ul>
        {faults.map((fault) => (
          <li key={`${fault.path} ${fault.message}`}>
            {fault.path === '' ? (
              fault.message
            ) : (
              <a href={`#${idOfFault(fault)}`} onClick={(event) => goTo(event, idOfFault(fault))}>
                {labelAt(fields, fault.path.split('.'))}: {fault.message}
              </a>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Puts the focus on a field, or on what it stands in; opens what is folded over it. */
function goTo(event: { preventDefault: () => void }, id: string): void {
  const parts = id.split('-');
  for (let length = parts.length; length > 1; length--) {
    const found = document.getElementById(parts.slice(0, length).join('-'));
    if (!found) continue;
    event.preventDefault();
    for (let at = found.parentElement; at; at = at.parentElement) if (at instanceof HTMLDetailsElement) at.open = true;
    found.focus();
    return;
  }
}

/** The labels on the way to a field. */
function labelAt(fields: readonly Field[], [name, ...rest]: readonly string[]): string {
  const field = fields.find((one) => one.name === name);
  if (!field) return name ?? '';
  const inner =
    field.kind === 'group'
      ? labelAt(field.fields, rest)
      : field.kind === 'list' && rest.length > 0
        ? `${Number(rest[0]) + 1}, ${labelAt(field.item, rest.slice(1))}`
        : field.kind === 'one-of'
          ? labelAt(
              field.of.flatMap((one) => one.fields),
              rest,
            )
          : '';
  return inner === '' ? field.label : `${field.label}, ${inner}`;
}
