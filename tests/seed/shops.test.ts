import type { FaultCase, Outcome } from '#core/review/result';
import { describe, expect, test } from 'vitest';
import { demoSite, judgeOf } from './demo-site';

const quay = judgeOf(demoSite('quay-street'));
const mill = judgeOf(demoSite('mill-lane'));

const verdicts = (c: FaultCase) => [c.claimed.verdict, c.tested.verdict];
const outcome = ({ outcomes }: FaultCase['claimed'], cls: string): Outcome | undefined =>
  outcomes.find(({ harm }) => harm.class === cls);

describe('Quay Street', () => {
  test('the marine wall floods the floor when its return stops, and keeps its animals', () => {
    const { claimed } = quay('marine-wall', 'return-stops:return:normal');
    expect(outcome(claimed, 'animals')?.verdict).toBe('covered');
    expect(outcome(claimed, 'floor')?.verdict).toBe('no-warning');
  });

  test('the fresh rack stands or falls with siphon breaks that nobody has tested', () => {
    const stopped = quay('fresh-rack', 'return-stops:return:normal');
    expect(stopped.claimed.verdict).toBe('holds');
    expect(['no-warning', 'too-late']).toContain(stopped.tested.verdict);
    expect(outcome(stopped.tested, 'animals')?.harm.what).toBe('level');
  });

  test('the coral trays are diluted out of a large reservoir before anybody walks past', () => {
    const stuck = quay('coral-trays', 'top-off-on:top-off:normal');
    expect(verdicts(stuck)).toEqual(['no-warning', 'no-warning']);
    expect(outcome(stuck.claimed, 'animals')?.harm.what).toBe('salinity');
  });

  test('no alarm tells of the show reef when the circuit of its gateway trips; a round does, if it comes in time', () => {
    const { claimed } = quay('show-reef', 'circuit-trips:show:normal');
    expect(claimed.verdict).toBe('some-hours');
    expect(new Set(outcome(claimed, 'animals')?.noticeBy.map(({ by }) => by))).toEqual(new Set(['round']));
  });

  test('the receiving tank is cooked by its old heater between closing and opening', () => {
    expect(verdicts(quay('receiving', 'heater-on:heater:normal'))).toEqual(['some-hours', 'some-hours']);
  });

  test.each(['heater-on:heater:normal', 'heater-off:heater:normal', 'air-stops:air:normal'])(
    'the puffers bear whatever their small heater and their air do: %s',
    (id) => {
      expect(verdicts(quay('puffers', id))).toEqual(['holds', 'holds']);
    },
  );
});

describe('Mill Lane', () => {
  test('either blower of the goldfish vats may fail, and one RCD stops both', () => {
    expect(verdicts(mill('goldfish-vats', 'circuit-trips:air-1:normal'))).toEqual(['holds', 'holds']);
    const tripped = mill('goldfish-vats', 'rcd-trips:rcd-air:normal').claimed;
    expect(tripped.verdict).toBe('some-hours');
    expect(outcome(tripped, 'animals')?.harm.what).toBe('oxygen');
  });

  test('an open backwash valve empties the koi vat; the alarm is in time while the shop is open', () => {
    const open = outcome(mill('koi-vat', 'waste-open:bead-filter:normal').claimed, 'animals');
    expect(open?.harm.what).toBe('level');
    expect(open?.verdict).toBe('some-hours');
    const wednesday = 2 * 24;
    expect(open?.spareS[wednesday + 11]).toBeGreaterThan(0);
    expect(open?.spareS[wednesday + 20]).toBeLessThan(0);
  });

  test('nobody ever learns of the tropical rack from its buzzer', () => {
    const welded = outcome(mill('tropical-rack', 'heater-on:heater:normal').claimed, 'animals');
    expect(welded?.verdict).toBe('some-hours');
    expect(welded?.noticeBy.filter(({ by }) => by === 'alarm')).toEqual([]);
  });

  test('the cut-out of the window tank saves it though nobody comes as claimed, and not at every hour as tested', () => {
    expect(verdicts(mill('window-tank', 'heater-on:heater:normal'))).toEqual(['holds', 'some-hours']);
  });

  test('the hospital tank outlives the night without power', () => {
    expect(verdicts(mill('hospital', 'utility-fails:mill-lane:normal'))).toEqual(['covered', 'covered']);
  });

  test('the old pond vat is not assessed, and the figure that is missing is named', () => {
    const { claimed, tested } = mill('pond-vat', 'circulation-stops:fall:normal');
    expect([claimed.verdict, tested.verdict]).toEqual(['not-assessed', 'not-assessed']);
    expect(claimed.reason).toContain('water volume of Old pond vat');
  });
});
