import { allowedFrom, quietAt } from '#core/plans/quiet-at';
import { loudLines, quietSpans } from '#core/plans/quiet-hours';
import type { Safeguard } from '#core/plans/safeguard';
import { describe, expect, it } from 'vitest';

const NIGHTS = { days: ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const, from: '21:00', to: '08:00' };
const at = (text: string) => Date.parse(text);
const place = (zone: string, quietHours: unknown) => ({ zone, quietHours }) as Parameters<typeof quietSpans>[0];

describe('Quiet hours', () => {
  it('run past midnight, also from the day before the first that is asked for', () => {
    const spans = quietSpans(place('Europe/London', [{ ...NIGHTS, why: 'neighbours' }]), '2026-12-01', '2026-12-02');
    expect(spans).toEqual([
      { from: at('2026-11-30T21:00Z'), to: at('2026-12-01T08:00Z'), why: 'neighbours' },
      { from: at('2026-12-01T21:00Z'), to: at('2026-12-02T08:00Z'), why: 'neighbours' },
    ]);
    expect(quietAt(spans, at('2026-12-01T07:59Z'))?.why).toBe('neighbours');
    expect(quietAt(spans, at('2026-12-01T08:00Z'))).toBeNull();
  });

  // Changes of the clocks of Europe/London: 29 March and 25 October 2026 at 01:00 UTC (IANA time zone database).
  it('have their true length on the nights on which the clocks change', () => {
    const hours = (day: string) => {
      const [span] = quietSpans(place('Europe/London', [NIGHTS]), day, day).slice(-1);
      return span ? (span.to - span.from) / 3_600_000 : 0;
    };
    expect([hours('2026-03-29'), hours('2026-10-25'), hours('2026-06-01')]).toEqual([10, 12, 11]);
  });

  it('end the second time where the clocks show their end twice', () => {
    const [span] = quietSpans(place('Europe/London', [{ ...NIGHTS, to: '01:30' }]), '2026-10-25', '2026-10-25');
    expect(span?.to).toBe(at('2026-10-25T01:30Z'));
  });

  it('put a test off to the end of all quiet that follows without a break, and not at all where a week is quiet', () => {
    const opening = { days: ['tue'] as const, from: '08:00', to: '17:00' };
    const spans = quietSpans(place('UTC', [NIGHTS, opening]), '2026-12-01', '2026-12-09');
    expect(allowedFrom(spans, at('2026-12-01T06:00Z'))).toBe(at('2026-12-01T17:00Z'));
    expect(allowedFrom(spans, at('2026-12-02T06:00Z'))).toBe(at('2026-12-02T08:00Z'));
    expect(allowedFrom(spans, at('2026-12-02T12:00Z'))).toBe(at('2026-12-02T12:00Z'));
    const always = quietSpans(place('UTC', [{ ...NIGHTS, to: '21:00' }]), '2026-12-01', '2026-12-12');
    expect(allowedFrom(always, at('2026-12-01T06:00Z'))).toBeNull();
  });
});

describe('A loud test', () => {
  const safeguard = (key: string, kind: Safeguard['kind'], loud?: boolean): Safeguard => ({
    ...{ key, name: key, kind, testEveryDays: 30, tests: [] },
    ...(loud !== undefined && { loud }),
  });
  const described = {
    site: { key: 's', name: 'S', zone: 'UTC', quietHours: [], generator: { safeguard: 'set' } },
    safeguards: [safeguard('set', 'standby-power'), safeguard('battery', 'standby-power')],
    systems: [
      {
        key: 'reef',
        safeguards: [
          safeguard('set', 'standby-power'),
          safeguard('blower', 'standby-air'),
          safeguard('hush', 'standby-air', false),
          safeguard('horn', 'alarm', true),
        ],
      },
    ],
  };

  it("is that of the generator, of standby air, and of what the site says, not of another's namesake", () => {
    expect([...loudLines(described)]).toEqual(['-/safeguard/set', 'reef/safeguard/blower', 'reef/safeguard/horn']);
  });

  it('is of no account where a site has no quiet hours', () => {
    const { quietHours: _, ...site } = described.site;
    expect(loudLines({ ...described, site }).size).toBe(0);
  });
});
