import 'server-only';
import type { FacilityForm, Fields, TestForm } from './form';
import { NOUNS, TABLES, type Table } from './nouns';

/** One thing of a facility: a member of one list of the site or of one of its systems. */
export interface Member {
  table: Table;
  /** Key of the system whose list it stands in; null for a list of the site. */
  system: string | null;
  key: string;
  /** Place in its list, from 0. */
  ordinal: number;
  /** What the file says of it, less what is kept in tables of its own. */
  fields: Fields;
  /** Equipment: its plan. */
  plan?: Fields;
  /** Safeguard: its tests. */
  tests?: TestForm[];
  /** Shift: keys of the people on duty. */
  people?: string[];
}

/**
 * Every thing of a facility, in the order of the file.
 *
 * @param form   the facility as the file writes it
 */
export function membersOf(form: FacilityForm): Member[] {
  const { systems = [] } = form;
  return TABLES.flatMap((table) => {
    const { siteList, systemList } = NOUNS[table];
    return [
      ...listed(table, null, siteList === undefined ? undefined : (form as Fields)[siteList]),
      ...systems.flatMap((system) =>
        listed(table, system.key, systemList === undefined ? undefined : (system as Fields)[systemList]),
      ),
    ];
  });
}

function listed(table: Table, system: string | null, list: unknown): Member[] {
  if (!Array.isArray(list)) return [];
  return list.map((member: Fields, ordinal) => {
    const key = String(member[NOUNS[table].key]);
    return { table, system, key, ordinal, ...apart(table, member) };
  });
}

/** Takes out what is kept in tables of its own. */
function apart(table: Table, member: Fields): Pick<Member, 'fields' | 'plan' | 'tests' | 'people'> {
  if (table === 'system') return { fields: withoutLists(member) };
  if (table === 'equipment') {
    const { plan, ...fields } = member;
    return { fields, plan: plan as Fields };
  }
  if (table === 'shift') {
    const { people, ...fields } = member;
    return { fields, people: people as string[] };
  }
  if (table !== 'safeguard') return { fields: member };
  const { tests, off, ...fields } = member;
  const { by, ...offRest } = (off ?? {}) as Fields;
  return {
    fields: off === undefined ? fields : { ...fields, off: offRest, offBy: by },
    tests: (tests ?? []) as TestForm[],
  };
}

const SYSTEM_LISTS = new Set(Object.values(NOUNS).map(({ systemList }) => systemList));

function withoutLists(system: Fields): Fields {
  return Object.fromEntries(Object.entries(system).filter(([field]) => !SYSTEM_LISTS.has(field)));
}
