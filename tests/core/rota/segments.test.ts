import { nobodyOn } from '#core/rota/nobody';
import { onNow } from '#core/rota/on-now';
import { segmentsOf } from '#core/rota/segments';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPeople, anyShifts } from './any-rota';

test('stretches of a rota leave no hole, agree with who is on at each moment, and with when nobody is', () => {
  fc.assert(
    fc.property(anyPeople(), anyShifts(), fc.integer({ min: 0, max: 364 }), (people, shifts, day) => {
      const rota = { site: { zone: 'Europe/Berlin' }, people, shifts, exceptions: [] };
      const from = Date.UTC(2026, 0, 1) + day * 86_400_000;
      const to = from + 2 * 86_400_000;
      const segments = segmentsOf(rota, from, to);
      expect(segments[0]?.from).toBe(from);
      expect(segments.at(-1)?.to).toBe(to);
      for (const [at, segment] of segments.entries()) {
        expect(segments[at + 1]?.from ?? to).toBe(segment.to);
        for (const moment of [segment.from, segment.to - 1]) {
          const on = onNow(rota, moment);
          const keys = (kind: string) => on.filter((one) => one.kind === kind).map(({ person }) => person);
          expect(keys('on-site').sort()).toEqual([...segment.onSite].sort());
          expect(keys('on-call').sort()).toEqual([...segment.onCall].sort());
        }
      }
      const bare = segments.filter(({ onSite, onCall }) => onSite.length + onCall.length === 0);
      expect(bare.map(({ from: begin, to: end }) => ({ from: begin, to: end }))).toEqual(nobodyOn(rota, from, to));
    }),
    { numRuns: 30 },
  );
});
