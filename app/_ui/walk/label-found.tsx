'use client';

import type { WalkPack } from '#core/rounds/pack';
import { placesOfCode, typedCode } from '#core/rounds/tank-code';
import { type ReactNode, useId } from 'react';
import { Page } from '../frame/page';
import { Scan } from './scan';
import { type OpenWalk, walkKey } from './view';
import style from './walk.module.css';
import { hashOf, type Where, whereIs } from './where';

interface LabelFoundProps {
  where: Extract<Where, { at: 'label' }>;
  walks: OpenWalk[];
  pack: WalkPack;
  status: ReactNode;
}

/** The label of a tank: it is scanned, or its code typed, and leads to the checks of that tank. */
export function LabelFound({ where: { site, code }, walks, pack, status }: LabelFoundProps) {
  const found = code === null ? [] : walks.flatMap((walk) => placesAt(walk, typedCode(code)));
  return (
    <Page title={code === null ? 'The label of a tank' : `Label ${typedCode(code)}`}>
      {status}
      {found.length > 0 ? (
        <>
          <p>Its checks stand on these rounds, the earliest first.</p>
          <ul className={style.plainList}>
            {found.map(({ walk, number, name }) => (
              <li key={`${walkKey(walk.named)} ${number}`}>
                <a className={style.go} href={hashOf({ at: 'place', site, walk: walkKey(walk.named), place: number })}>
                  {name}, on {walk.name}
                </a>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <>
          {code === null ? null : (
            <p>
              No round that is kept here has a tank with this code. Walk one besides the timetable, or type the code
              again.
            </p>
          )}
          <Scan found={(text) => open(site, text)} />
          <TypeCode site={site} />
        </>
      )}
      <p>
        <a className={style.go} href={hashOf({ at: 'site', site })}>
          Rounds of {pack.site.name}
        </a>
      </p>
    </Page>
  );
}

function placesAt(walk: OpenWalk, code: string) {
  return placesOfCode(walk.places, code).map((number) => ({
    walk,
    number,
    name: walk.places[number - 1]?.name ?? walk.name,
  }));
}

/** Goes where a label leads: to a page of this site, or to what was scanned as a bare code. */
function open(site: string, text: string): boolean {
  const mark = text.indexOf('#/');
  const where = mark < 0 ? { at: 'label' as const, site, code: typedCode(text) } : whereIs(text.slice(mark));
  if (where.at !== 'label' || where.site !== site || !where.code) return false;
  location.hash = hashOf(where);
  return true;
}

function TypeCode({ site }: { site: string }) {
  const id = useId();
  return (
    <form
      className={style.form}
      onSubmit={(event) => {
        event.preventDefault();
        open(site, String(new FormData(event.currentTarget).get('code') ?? ''));
      }}
    >
      <label htmlFor={id}>
        Or type the code on the label
        <input id={id} name="code" type="text" autoCapitalize="characters" autoComplete="off" maxLength={12} required />
      </label>
      <button type="submit" className={style.main}>
        Open its checks
      </button>
    </form>
  );
}
