import type { Facility } from '../facility/facility';
import type { About, Check, Range } from './check';
import { describedPlaces } from './described';
import { cleannessOf } from './places';
import type { DescribedLine, OwnLine, RoundSheet, SheetLine } from './round-sheet';
import { SHEET_FORMAT, type Sheet, type SheetPlace } from './sheet';

const OWN_WHY = 'the site wants to know';

/** A kept sheet as it is walked, and its lines that stand for nothing any more. */
export interface MadeSheet {
  sheet: Sheet;
  /** Keys of lines whose thing is no longer described, or is off. */
  gone: string[];
}

/**
 * The sheet to be walked of a kept one: its lines in its order within each place, the places clean before dirty. A line of a
 * thing that is no longer described falls away, and is told of.
 * @param day      ISO date of the round at the site
 * @param described   places of the description on that day, for whoever makes many sheets
 */
export function sheetOfKept(
  facility: Facility,
  { key: name, lines }: Pick<RoundSheet, 'key' | 'lines'>,
  day: string,
  described: readonly SheetPlace[] = describedPlaces(facility, day),
): MadeSheet {
  const gone: string[] = [];
  const placed: { at: number; check: Check }[] = [];
  const places = withOwn(facility, described);
  for (const line of lines) {
    const at = places.findIndex((place) => isAt(place, line));
    const place = places[at];
    const check = place && checkOf(place, line, name);
    if (check) placed.push({ at, check });
    else gone.push(line.key);
  }
  const walked = places
    .map((place, index) => ({ ...place, checks: placed.filter(({ at }) => at === index).map(({ check }) => check) }))
    .filter(({ checks }) => checks.length > 0);
  return { sheet: { format: SHEET_FORMAT, places: walked }, gone };
}

/** Places of the description, and one for what belongs to the whole site where nothing of that is described. */
function withOwn(facility: Facility, described: readonly SheetPlace[]): SheetPlace[] {
  const own: SheetPlace = { name: facility.site.name, system: null, cleanness: 0, checks: [] };
  const bare = facility.systems
    .filter(({ key }) => !described.some((place) => place.system?.key === key))
    .map((system): SheetPlace => {
      const { key, name } = system;
      return { name: `${name}: plant`, system: { key, name }, cleanness: cleannessOf(system), checks: [] };
    });
  const has = described.some(({ system }) => system === null);
  return [...(has ? [] : [own]), ...described, ...bare].sort((a, b) => a.cleanness - b.cleanness);
}

function isAt(place: SheetPlace, line: SheetLine): boolean {
  if (line.kind === 'described') return place.checks.some(({ key }) => key === line.key);
  return (place.system?.key ?? undefined) === line.system && place.tank === line.tank;
}

function checkOf(place: SheetPlace, line: SheetLine, sheet: string): Check | null {
  if (line.kind !== 'described') return ownCheck(place, line, sheet);
  const check = place.checks.find(({ key }) => key === line.key);
  return check ? worded(check, line) : null;
}

function worded(check: Check, { what, usual, secondSignature }: DescribedLine): Check {
  const said = { ...(what !== undefined && { what }), ...(secondSignature && { secondSignature }) };
  return { ...check, ...said, ...(usual && rangeOf(check, usual)) };
}

function rangeOf({ kind }: Check, usual: Range): { usual?: Range; perDay?: Range } {
  if (kind === 'number') return { usual };
  return kind === 'used' ? { perDay: usual } : {};
}

/** Entries hang on keys: two sheets may each have a line of this key. */
function ownCheck(place: SheetPlace, line: OwnLine, sheet: string): Check {
  const system = place.system?.key ?? null;
  const about: About =
    place.tank !== undefined
      ? { noun: 'tank', system, key: place.tank }
      : system === null
        ? { noun: 'site', system, key: '-' }
        : { noun: 'system', system, key: system };
  const base = {
    key: `own/${sheet}/${line.key}`,
    about,
    what: line.what,
    why: line.why ?? OWN_WHY,
    ...(line.secondSignature && { secondSignature: line.secondSignature }),
  };
  switch (line.kind) {
    case 'figure':
      return { ...base, kind: 'figure', unit: line.unit, ...(line.usual && { usual: line.usual }) };
    case 'choice':
      return { ...base, kind: 'choice', options: line.options };
    case 'doses':
      return {
        ...base,
        kind: 'doses',
        ...(line.dose && { dose: line.dose }),
        ...(line.usual && { perDay: line.usual }),
      };
    case 'photo':
    case 'text':
    case 'yes-no':
      return { ...base, kind: line.kind };
  }
}
