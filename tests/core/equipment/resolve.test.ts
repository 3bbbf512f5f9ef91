import { describe, expect, test } from 'vitest';
import defaults from '#core/equipment/defaults.json';
import { resolveSystem } from '#core/equipment/resolve';
import type { ResolvedSystem } from '#core/equipment/resolved';
import type { Side } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import { pressureFromAltitude } from '#core/water/pressure-from-altitude';
import {
  chiller,
  drainValve,
  heater,
  plan,
  returnPump,
  skimmer,
  thermostat,
  topOff,
} from '../../_support/build-equipment';
import { facility, room, site } from '../../_support/build-facility';
import { entered, unknown } from '../../_support/given';
import { reservoir, stock, sump, system, tank } from '../../_support/build-system';
import { onlySystem } from '../simulate/course';
import { vague } from './vague';

function resolved(of: Facility, side: Side = 'nominal', only: string | null = null): ResolvedSystem {
  return resolveSystem(of, onlySystem(of), side, only);
}

const reef = (given: Parameters<typeof system>[0] = {}): Facility => facility({ systems: [system(given)] });

describe('what nobody knows and no default can stand for', () => {
  test.each<[string, Facility, string]>([
    ['the water of a tank', reef({ tanks: [tank({ volumeL: unknown() }), sump()] }), 'water volume of Display'],
    ['its open surface', reef({ tanks: [tank({ surfaceM2: unknown() }), sump()] }), 'open surface of Display'],
    ['the power of a heater', reef({ equipment: [heater({ ratedW: unknown() })] }), 'power of Heater 1'],
    ['the flow of the return', reef({ equipment: [returnPump({ flowLPerH: undefined })] }), 'flow of Return pump'],
    ['what a chiller takes out', reef({ equipment: [chiller({ coolingW: unknown() })] }), 'cooling power of Chiller 1'],
    ['the salinity', reef({ salinity: unknown() }), 'salinity'],
    ['the mass of the animals', reef({ stock: [stock({ eachG: unknown() })] }), 'mass of one of Reef fish'],
    ['the air of the room', facility({ rooms: [room({ temperatureC: unknown() })] }), 'air temperature of Gallery'],
    ['its humidity', facility({ rooms: [room({ humidityPct: unknown() })] }), 'humidity of Gallery'],
  ])('is %s: it is named as missing and becomes no number', (_, of, name) => {
    const { missing } = resolved(of);
    expect(missing).toContain(name);
    expect(resolved(facility()).missing).toEqual([]);
  });

  test('does not turn into a plausible figure by accident', () => {
    const of = reef({ tanks: [tank({ volumeL: unknown() }), sump()] });
    expect(resolved(of).tanks[0]?.volume).toBeNaN();
  });
});

describe('a default', () => {
  const bare = reef({
    tanks: [
      tank({ drainDownMm: undefined, outletMm: undefined, rimMm: unknown(), lossWPerK: undefined }),
      sump({ rimMm: undefined, pumpDryMm: unknown() }),
      reservoir(),
    ],
    equipment: [
      heater(),
      returnPump({ ratedW: undefined }),
      skimmer({ gasTransferLPerH: undefined, floodsAboveMm: undefined }),
      topOff({ flowLPerH: undefined }),
      drainValve({ wasteLPerH: undefined, wasteToMm: undefined }),
    ],
  });

  test('is noted with its path, its range and its source, wherever it stands in for a figure', () => {
    const { notes, missing } = resolved(bare);
    expect(missing).toEqual([]);
    const paths = notes.map((note) => note.path);
    for (const path of [
      'systems/reef-1/tanks/display/drainDownMm',
      'systems/reef-1/tanks/display/outletMm',
      'systems/reef-1/tanks/display/rimMm',
      'systems/reef-1/tanks/display/lossWPerK',
      'systems/reef-1/tanks/sump/rimMm',
      'systems/reef-1/tanks/sump/pumpDryMm',
      'systems/reef-1/equipment/return-pump/ratedW',
      'systems/reef-1/equipment/skimmer/gasTransferLPerH',
      'systems/reef-1/equipment/skimmer/floodsAboveMm',
      'systems/reef-1/equipment/top-off/flowLPerH',
      'systems/reef-1/equipment/drain-valve/wasteLPerH',
      'systems/reef-1/equipment/drain-valve/wasteToMm',
    ])
      expect(paths).toContain(path);
    for (const note of notes) {
      expect(note.source).not.toBe('');
      expect(note.name).not.toBe('');
      expect(note.low).toBeLessThan(note.high);
      expect(note.value).toBeGreaterThanOrEqual(note.low);
      expect(note.value).toBeLessThanOrEqual(note.high);
    }
  });

  test('is what the table says, in SI units', () => {
    const [display, below] = resolved(bare).tanks;
    expect(display?.drainDown).toBeCloseTo(defaults.drainDownMm.value / 1000, 12);
    expect(below?.rim).toBeCloseTo(defaults.sumpRimMm.value / 1000, 12);
    const pump = resolved(bare).devices.find((d) => d.equipment.type === 'return-pump');
    expect(pump?.watts).toBeCloseTo(3 * defaults.pumpWPerM3H.value, 9);
    expect(pump?.flow).toBeCloseTo(3 / 3600, 12);
  });

  test('gives way to what is known', () => {
    const of = reef({ tanks: [tank({ drainDownMm: 31 }), sump()] });
    expect(resolved(of).tanks[0]?.drainDown).toBe(0.031);
    expect(resolved(of).notes.some((note) => note.path.endsWith('display/drainDownMm'))).toBe(false);
  });

  test('stands in for a height above the sea that nobody gave, and says so', () => {
    const of = facility({ site: site({ altitudeM: undefined }) });
    expect(resolved(of).notes.map((note) => note.path)).toContain('site/altitudeM');
    expect(resolved(of).pressureAtm).toBeCloseTo(1, 9);
    expect(resolved(of, 'warm').pressureAtm).toBeCloseTo(pressureFromAltitude(300) / 101_325, 4);
    expect(resolved(facility()).notes.some((note) => note.path === 'site/altitudeM')).toBe(false);
  });
});

describe('a plausible range', () => {
  const of = reef({ tanks: [tank({ volumeL: entered(400, { low: 350, high: 450 }) }), sump()] });

  test('is left alone nominally and taken at its bad end on a side', () => {
    expect(resolved(of).tanks[0]?.volume).toBe(0.4);
    expect(resolved(of, 'warm').tanks[0]?.volume).toBe(0.35);
    expect(resolved(of, 'cold').tanks[0]?.volume).toBe(0.35);
  });

  test('is taken for one figure alone where one is asked about', () => {
    const path = 'systems/reef-1/tanks/display/volumeL';
    const everything = vague(of);
    const [one, other] = resolved(everything, 'warm', path).tanks;
    expect(one?.volume).toBeCloseTo(0.4 / 1.25, 12);
    expect(other?.volume).toBe(0.12);
    expect(resolved(everything, 'warm').tanks[1]?.volume).toBeCloseTo(0.12 / 1.25, 12);
  });

  test('of a reservoir has its bad end at the full one: it is what can run into the water', () => {
    const store = reef({ tanks: [tank(), sump(), reservoir({ volumeL: entered(25, { low: 20, high: 60 }) })] });
    for (const side of ['warm', 'cold'] as const) expect(resolved(store, side).tanks[2]?.volume).toBe(0.06);
  });
});

test('where a run starts looking does not depend on the order of the equipment', () => {
  const equipment = [
    chiller({ plan: plan({ regulation: thermostat({ lowC: 26, highC: 26.5 }) }) }),
    heater(),
    heater({ key: 'heater-2', plan: plan({ regulation: thermostat({ lowC: 24, highC: 24.4 }) }) }),
  ];
  const forth = resolved(reef({ equipment }));
  const back = resolved(reef({ equipment: [...equipment].reverse() }));
  expect(forth.temperature).toBe(back.temperature);
  expect(forth.temperature).toBeCloseTo((25 + 24.2) / 2, 12);
});
