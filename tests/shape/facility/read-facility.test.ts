import { readFileSync } from 'node:fs';
import { readFacility } from '#shape/facility/read-facility';
import { writeFacility } from '#shape/facility/write-facility';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';

const SMALL = readFileSync(new URL('small-file.yaml', import.meta.url), 'utf8');

/** The faults of a text, as `line:column path: message`. */
function faults(text: string, format?: 'json' | 'yaml'): string[] {
  const read = readFacility(text, { format });
  return read.ok ? [] : read.reason.map(({ line, column, path, message }) => `${line}:${column} ${path}: ${message}`);
}

/** The faults of the small file with one thing in it written otherwise. */
function faultsWith(from: string, to: string): string[] {
  expect(SMALL).toContain(from);
  return faults(SMALL.replace(from, to));
}

describe('a file written as a person would', () => {
  const read = readFacility(SMALL);
  const system = read.ok ? read.value.systems[0] : undefined;

  test('is read', () => {
    expect(faults(SMALL)).toEqual([]);
  });

  test('has its units turned into those of the fields', () => {
    expect(system?.tanks[0]?.volumeL).toEqual({
      value: 120 * 3.785411784,
      origin: 'measured',
      low: 115 * 3.785411784,
      high: 125 * 3.785411784,
      source: 'Filled with a meter',
    });
    expect(system?.equipment[0]?.ratedW).toEqual({ value: 300, origin: 'entered' });
    expect(system?.equipment[0]?.plan.regulation).toMatchObject({ lowC: (45.5 * 5) / 9, highC: (46.5 * 5) / 9 });
  });

  test('has what it left out as empty lists', () => {
    expect(system).toMatchObject({ stock: [], alarms: [], states: [], safeguards: [] });
    expect(system?.equipment[0]?.plan).toMatchObject({ cutOuts: [], interlocks: [], states: [] });
  });

  test('keeps 07:30 a time, no a name and unknown unknown', () => {
    expect(read.ok && read.value.shifts[0]?.from).toBe('07:30');
    expect(read.ok && read.value.people[0]?.name).toBe('no');
    expect(read.ok && read.value.rooms[0]?.humidityPct).toEqual({ value: null, origin: 'unknown' });
  });

  test('is written in a form that is read and written the same again', () => {
    if (!read.ok) throw new Error('not read');
    const text = writeFacility(read.value);
    const again = readFacility(text);
    expect(again).toEqual(read);
    expect(again.ok && writeFacility(again.value)).toBe(text);
  });

  test('may say where an editor finds the schema, which is not part of the facility', () => {
    const withSchema = readFacility(SMALL.replace('format:', '$schema: ./facility.json\nformat:'));
    expect(withSchema).toEqual(read);
  });

  test('may begin with a byte-order mark and end its lines as on any machine', () => {
    expect(readFacility(`\uFEFF${SMALL.replaceAll('\n', '\r\n')}`)).toEqual(read);
  });
});

describe('a fault is named with its place, its field, what it must be and what was found', () => {
  test.each([
    [
      'room: gallery',
      'room: galery',
      '13:5 systems[0].room: room must be the key of a room; "galery" is none. Did you mean "gallery"?',
    ],
    [
      'kind: reef',
      'kind: reff',
      '12:5 systems[0].kind: kind must be one of reef, fish-only-marine, cold-marine, tropical-fresh, goldfish, brackish, jelly, ray, quarantine, coral-farm, live-food, found "reff". Did you mean reef?',
    ],
    [
      'lowC: 77.5 °F',
      'lowC: 200 °F',
      '30:65 systems[0].equipment[0].plan.regulation.lowC: lowC must be at most 60, found "200 °F"',
    ],
    [
      'lowC: 77.5 °F',
      'lowC: warm',
      '30:65 systems[0].equipment[0].plan.regulation.lowC: lowC must be a number (°C) or a number with its unit such as 78 °F, found "warm"',
    ],
    [
      'lowC: 77.5 °F',
      'lowC: 25 L',
      '30:65 systems[0].equipment[0].plan.regulation.lowC: lowC must be a number (°C) or a number with its unit such as 78 °F, found "25 L"',
    ],
    [
      'surfaceM2: 8 ft2',
      'surfaceM2: -1',
      '20:9 systems[0].tanks[0].surfaceM2: surfaceM2 must be more than 0, found -1',
    ],
    [
      'low: 115 gal',
      'low: 121 gal',
      '19:9 systems[0].tanks[0].volumeL: volumeL must have low ≤ value ≤ high, found an object with fields',
    ],
    [
      'from: measured',
      'form: measured',
      '19:36 systems[0].tanks[0].volumeL.form: form is not a field here. Did you mean from?',
    ],
    [
      'from: measured',
      'from: unknown',
      '19:36 systems[0].tanks[0].volumeL.from: from must be one of measured, entered, default, found "unknown"',
    ],
    [
      'ratedW:',
      'ratedWatts:',
      '27:9 systems[0].equipment[0].ratedWatts: ratedWatts is not a field here. Did you mean ratedW?',
    ],
    ['    salinity: 35\n', '', '10:5 systems[0].salinity: salinity is missing'],
    [
      'salinity: 35',
      'salinity:',
      '14:5 systems[0].salinity: salinity must be a number (practical salinity), or "unknown", or an object with value and from, found nothing',
    ],
    ['name: no,', 'name: 12,', '34:19 people[0].name: name must be text, found 12; put it in quotes'],
    [
      'name: no,',
      'name: " no",',
      '34:19 people[0].name: name must be one line of text, without spaces at its ends, found " no"',
    ],
    [
      'key: display',
      'key: Display',
      '16:9 systems[0].tanks[0].key: key must be lower-case letters and digits, with single hyphens between them, found "Display"',
    ],
    [
      'from: 07:30',
      'from: 7:30',
      '36:62 shifts[0].from: from must be a time of day as HH:MM, from 00:00 to 23:59, found "7:30"',
    ],
    ['days: [mon]', 'days: []', '36:49 shifts[0].days: days must have at least 1 member, found a list of 0'],
    [
      'days: [mon]',
      'days: [mon, mon]',
      '36:49 shifts[0].days: days must not name the same thing twice, found a list of 2',
    ],
    ['days: [mon]', 'days: mon', '36:49 shifts[0].days: days must be a list, found "mon"'],
    [
      'zone: Europe/London',
      'zone: Europe/Lndon',
      '3:38 site.zone: zone must be a known IANA time zone such as Europe/London, found "Europe/Lndon". Did you mean Europe/London?',
    ],
    [
      'zone: Europe/London',
      'zone: +01:00',
      '3:38 site.zone: zone must be an IANA time zone such as Europe/London, found "+01:00"',
    ],
    ['facility/1', 'facility/2', '2:1 format: format must be "holdfast.facility/1", found "holdfast.facility/2"'],
    [
      'kind: thermostat',
      'kind: thermostt',
      '30:15 systems[0].equipment[0].plan.regulation.kind: kind must be one of always, never, thermostat, level, hours, found "thermostt". Did you mean thermostat?',
    ],
    [
      'humidityPct: unknown',
      'humidityPct: [1, 2]',
      '8:5 rooms[0].humidityPct: humidityPct must have exactly 24 members, found a list of 2',
    ],
    [
      'quantity: temperature',
      'quantity: temperature, calibrationDue: 2026-02-30',
      '32:59 systems[0].sensors[0].calibrationDue: calibrationDue must be a day of the calendar as YYYY-MM-DD, found "2026-02-30"',
    ],
    [
      'sensors: [probe]',
      'sensors: {a: probe}',
      '30:33 systems[0].equipment[0].plan.regulation.sensors: sensors must be a list, found an object with fields',
    ],
  ])('%s → %s', (from, to, expected) => {
    expect(faultsWith(from, to)).toEqual([expected]);
  });

  test('a hard bound holds for text with a unit and for both ends of the range', () => {
    expect(faultsWith('value: 120 gal', 'value: 0 gal')).toContain(
      '19:20 systems[0].tanks[0].volumeL.value: value must be more than 0, found "0 gal"',
    );
  });
});

describe('every fault of a file is named in one go', () => {
  test('of form and of reference, in the order of the file', () => {
    const text = SMALL.replace('room: gallery', 'room: attic')
      .replace('surfaceM2: 8 ft2', 'surfaceM2: 0')
      .replace('sensors: [probe]', 'sensors: [prob]')
      .replace('people: [robin]', 'people: [robin, kim]');
    expect(faults(text).map((line) => line.split(': ')[0])).toEqual([
      '13:5 systems[0].room',
      '20:9 systems[0].tanks[0].surfaceM2',
      '30:43 systems[0].equipment[0].plan.regulation.sensors[0]',
      '36:48 shifts[0].people[1]',
    ]);
  });

  test('and a reference to a member that is itself faulty is not held against it', () => {
    expect(faultsWith('key: robin', 'key: Robin').map((line) => line.split(': ')[0])).toEqual(['34:7 people[0].key']);
  });

  test('and what seems absent is not missed while a part of the file cannot be read', () => {
    const text = writeFacility(facility(), { format: 'yaml' }).replace('role: sump', 'role: smup');
    expect(faults(text).map((line) => line.split(': ')[0])).toEqual(['134:9 systems[0].tanks[1].role']);
  });

  test('and a faulty site or system does not hide what is in the rest', () => {
    const text = SMALL.replace('name: Harbour', 'nam: Harbour')
      .replace('kind: reef', 'kind: pond')
      .replace('tank: display }', 'tank: pond }');
    expect(faults(text).map((line) => line.split(': ')[0])).toEqual([
      '3:1 site.name',
      '3:23 site.nam',
      '12:5 systems[0].kind',
      '32:59 systems[0].sensors[0].tank',
    ]);
  });
});
