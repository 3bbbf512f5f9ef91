import 'server-only';
import type { z } from 'zod';
import type { Table } from '#data/facility/nouns';
import type { ThingNoun } from '#shape/describe/edit';
import { alarmShape } from '#shape/facility/alarm';
import { circuitShape } from '#shape/facility/circuit';
import { equipmentShape } from '#shape/facility/equipment';
import { monitorShape } from '#shape/facility/monitor';
import { operatingStateShape } from '#shape/facility/operating-state';
import { personShape } from '#shape/facility/person';
import { roomShape } from '#shape/facility/room';
import { roundSlotShape } from '#shape/facility/round-slot';
import { safeguardShape } from '#shape/facility/safeguard';
import { sensorShape } from '#shape/facility/sensor';
import { shiftShape } from '#shape/facility/shift';
import { siteShape } from '#shape/facility/site';
import { stockShape } from '#shape/facility/stock';
import { systemShape } from '#shape/facility/system';
import { tankShape } from '#shape/facility/tank';
import { toleranceProfileShape } from '#shape/facility/tolerance-profile';

/** How one kind of thing is described. */
export interface ThingKind {
  shape: z.ZodType;
  /** What one is called. */
  one: string;
  /** The list it stands in; of the site, or of a system. None for the site itself. */
  siteList?: string;
  systemList?: string;
  /** Where it is kept; none for the site itself. */
  table?: Table;
  /** The field that tells it from its neighbours. */
  key: 'key' | 'name';
  /** Fields that are not changed here. */
  apart: readonly string[];
  /** Whether one can be put in the place of another, and whether it can go to another system. */
  replaced?: boolean;
  moved?: boolean;
}

const LISTS = ['tanks', 'equipment', 'sensors', 'stock', 'safeguards', 'alarms', 'states'] as const;

/** Every kind of thing. */
export const THING_KINDS: Readonly<Record<ThingNoun, ThingKind>> = {
  site: { shape: siteShape, one: 'site', key: 'key', apart: [] },
  room: { shape: roomShape, one: 'room', siteList: 'rooms', table: 'room', key: 'key', apart: [] },
  circuit: {
    shape: circuitShape,
    one: 'electrical circuit',
    siteList: 'circuits',
    table: 'circuit',
    key: 'key',
    apart: [],
  },
  monitor: { shape: monitorShape, one: 'monitor', siteList: 'monitors', table: 'monitor', key: 'key', apart: [] },
  safeguard: {
    shape: safeguardShape,
    one: 'safeguard',
    siteList: 'safeguards',
    systemList: 'safeguards',
    table: 'safeguard',
    key: 'key',
    apart: ['tests', 'off'],
  },
  person: {
    shape: personShape,
    one: 'person of the rota',
    siteList: 'people',
    table: 'person',
    key: 'key',
    apart: [],
  },
  shift: { shape: shiftShape, one: 'shift', siteList: 'shifts', table: 'shift', key: 'key', apart: [] },
  round: { shape: roundSlotShape, one: 'round', siteList: 'rounds', table: 'round_slot', key: 'key', apart: [] },
  profile: {
    shape: toleranceProfileShape,
    one: 'tolerance profile',
    siteList: 'profiles',
    table: 'tolerance_profile',
    key: 'key',
    apart: [],
  },
  system: { shape: systemShape, one: 'system', siteList: 'systems', table: 'system', key: 'key', apart: LISTS },
  tank: { shape: tankShape, one: 'tank', systemList: 'tanks', table: 'tank', key: 'key', apart: [] },
  equipment: {
    shape: equipmentShape,
    one: 'piece of equipment',
    systemList: 'equipment',
    table: 'equipment',
    key: 'key',
    apart: ['plan'],
    replaced: true,
    moved: true,
  },
  sensor: {
    shape: sensorShape,
    one: 'sensor',
    systemList: 'sensors',
    table: 'sensor',
    key: 'key',
    apart: [],
    replaced: true,
    moved: true,
  },
  stock: {
    shape: stockShape,
    one: 'stock of animals',
    systemList: 'stock',
    table: 'stock',
    key: 'key',
    apart: [],
    moved: true,
  },
  alarm: { shape: alarmShape, one: 'alarm', systemList: 'alarms', table: 'alarm_definition', key: 'key', apart: [] },
  state: {
    shape: operatingStateShape,
    one: 'operating state',
    systemList: 'states',
    table: 'operating_state',
    key: 'name',
    apart: [],
  },
};
