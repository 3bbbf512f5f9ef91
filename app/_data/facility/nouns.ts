import 'server-only';

/** Tables that hold the members of a facility, in the order in which they must be written: what is referred to first. */
export const TABLES = [
  'person',
  'room',
  'system',
  'safeguard',
  'circuit',
  'monitor',
  'tolerance_profile',
  'shift',
  'round_slot',
  'round_sheet',
  'tank',
  'equipment',
  'sensor',
  'stock',
  'alarm_definition',
  'operating_state',
] as const;
export type Table = (typeof TABLES)[number];

/**
 * How the members of one list of the facility file are kept: what has a column of its own. Everything else of a member
 * stands in `detail`, in the form of the file.
 */
export interface Noun {
  /** Lists it is a member of: of the site, of each system. */
  siteList?: string;
  systemList?: string;
  /** The field that tells it from its neighbours. */
  key: 'key' | 'name';
  /** Column by field. */
  columns: Readonly<Record<string, string>>;
  /** Fields that name another member by key: the column that holds its id, and the table it stands in. */
  links: Readonly<Record<string, { column: string; table: Table }>>;
  /** Fields that hold a person's name: the column with the id of the name. */
  names: Readonly<Record<string, string>>;
}

const NAMED = { key: 'key', columns: { name: 'name' }, links: {}, names: {} } as const;

export const NOUNS: Readonly<Record<Table, Noun>> = {
  person: { ...NAMED, siteList: 'people', columns: { role: 'role' }, names: { name: 'name_id' } },
  room: { ...NAMED, siteList: 'rooms' },
  system: {
    ...NAMED,
    siteList: 'systems',
    columns: { name: 'name', kind: 'kind' },
    links: { room: { column: 'room_id', table: 'room' } },
  },
  safeguard: {
    ...NAMED,
    siteList: 'safeguards',
    systemList: 'safeguards',
    columns: { name: 'name', kind: 'kind', testEveryDays: 'test_every_days', tests: 'tests' },
    names: { offBy: 'off_by_id' },
  },
  circuit: {
    ...NAMED,
    siteList: 'circuits',
    columns: { name: 'name', rcd: 'rcd' },
    links: { upsSafeguard: { column: 'ups_safeguard_id', table: 'safeguard' } },
  },
  monitor: {
    ...NAMED,
    siteList: 'monitors',
    columns: { name: 'name', kind: 'kind' },
    links: { circuit: { column: 'circuit_id', table: 'circuit' } },
  },
  tolerance_profile: { ...NAMED, siteList: 'profiles' },
  shift: { ...NAMED, siteList: 'shifts', columns: { kind: 'kind' } },
  round_slot: { ...NAMED, siteList: 'rounds' },
  round_sheet: { ...NAMED, siteList: 'sheets' },
  tank: {
    ...NAMED,
    systemList: 'tanks',
    columns: { name: 'name', role: 'role' },
    links: { siphonSafeguard: { column: 'siphon_safeguard_id', table: 'safeguard' } },
  },
  equipment: {
    ...NAMED,
    systemList: 'equipment',
    columns: { name: 'name', type: 'type' },
    links: { tank: { column: 'tank_id', table: 'tank' }, circuit: { column: 'circuit_id', table: 'circuit' } },
  },
  sensor: {
    ...NAMED,
    systemList: 'sensors',
    columns: { name: 'name', quantity: 'quantity' },
    links: {
      tank: { column: 'tank_id', table: 'tank' },
      equipment: { column: 'equipment_id', table: 'equipment' },
      gateway: { column: 'gateway_id', table: 'monitor' },
    },
  },
  stock: {
    ...NAMED,
    systemList: 'stock',
    columns: { group: 'species_group', count: 'count' },
    links: { tank: { column: 'tank_id', table: 'tank' } },
  },
  alarm_definition: {
    ...NAMED,
    systemList: 'alarms',
    links: { safeguard: { column: 'safeguard_id', table: 'safeguard' } },
  },
  operating_state: {
    key: 'name',
    systemList: 'states',
    columns: {},
    links: { endSafeguard: { column: 'end_safeguard_id', table: 'safeguard' } },
    names: {},
  },
};

/** Columns of a table that a re-import, or a move to another system, may change. */
export function changingColumns(table: Table): string[] {
  const { columns, links, names, systemList } = NOUNS[table];
  return [
    'key',
    ...(systemList === undefined ? [] : ['system_id']),
    'ordinal',
    ...Object.values(columns),
    ...Object.values(links).map(({ column }) => column),
    ...Object.values(names),
    'detail',
  ];
}
