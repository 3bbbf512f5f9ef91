import { describe, expect, test } from 'vitest';
import { readBody } from '#shape/incidents/bodies';
import { investigateRequest } from '#shape/incidents/investigate-request';
import { logRequest } from '#shape/incidents/log-request';

const SENSOR = '01a2119e-3a5a-773f-ac5d-188c0fd166eb';
const meta = { site: 'harbour', number: '3', entry: SENSOR };

describe('what is written in an incident', () => {
  test('a meter is read with a point or a comma, in the units it was typed in', () => {
    const read = logRequest.parse({
      ...meta,
      kind: 'measurement',
      units: 'us',
      [`figure.temperature.${SENSOR}`]: '77',
      'figure.oxygen.-': '3,1',
      'figure.ph.-': '',
    });
    expect(read).toMatchObject({
      number: 3,
      figures: [
        { quantity: 'temperature', sensor: SENSOR, value: 25 },
        { quantity: 'oxygen', value: 3.1 },
      ],
    });
  });

  test.each(['seven', '1e400', 'NaN', '0x10', '--1', '9'.repeat(400)])(
    'a meter that reads %s is told which field is wrong',
    (typed) => {
      const read = logRequest.safeParse({ ...meta, kind: 'measurement', units: 'metric', 'figure.oxygen.-': typed });
      expect(read.error?.issues.map(({ path }) => path[0])).toContain('figure.oxygen.-');
    },
  );

  test('neither an empty meter nor a sample without a bottle is kept, but why not is', () => {
    const kinds = [{ kind: 'measurement', units: 'metric' }, { kind: 'sample' }];
    for (const kind of kinds) {
      expect(logRequest.safeParse({ ...meta, ...kind }).success).toBe(false);
      expect(logRequest.safeParse({ ...meta, ...kind, notDone: 'no bottle' }).success).toBe(true);
    }
    const bottles = logRequest.parse({ ...meta, kind: 'sample', chilled: 'yes', frozen: 'yes' });
    expect(bottles).toMatchObject({ bottles: ['chilled', 'frozen'] });
  });

  test('a loss says how many, or how much water in litres', () => {
    const loss = { ...meta, kind: 'loss', units: 'us', group: 'Rays' };
    expect(investigateRequest.safeParse(loss).success).toBe(false);
    const kept = investigateRequest.parse({ ...loss, dead: '2', water: '10' });
    expect(kept).toMatchObject({ dead: 2, missing: 0 });
    // 1 US gallon = 3.785411784 L exactly (NIST SP 811, appendix B).
    expect(kept.kind === 'loss' && kept.waterL).toBeCloseTo(37.85411784, 8);
  });

  test('a reminder alone has to say why nothing stronger can be done', () => {
    const action = { ...meta, kind: 'action', text: 'Look', owner: 'lead', due: '2026-12-01', strength: 'reminder' };
    expect(investigateRequest.safeParse(action).error?.issues[0]?.path).toEqual(['why']);
    expect(investigateRequest.safeParse({ ...action, why: 'until the valve comes' }).success).toBe(true);
    expect(investigateRequest.safeParse({ ...action, strength: 'remove' }).success).toBe(true);
  });
});

test('a body is read as its kind, and one that is taken back as nothing', () => {
  expect(readBody('log', { text: 'x', source: 'device' })).toEqual({ text: 'x', source: 'device' });
  expect(readBody('log', { withdrawn: true })).toBeNull();
  expect(() => readBody('log', { text: 'x', source: 'device', more: 1 })).toThrow();
});
