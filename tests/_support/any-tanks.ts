import type { Tank } from '#core/facility/system';
import type { Safeguard } from '#core/plans/safeguard';
import fc from 'fast-check';
import { anyFigure, anyName, maybe } from './any-figure';
import { maybeSafeguard } from './any-plan';

const positive = () => anyFigure(0.001, 1000);
const length = () => maybe(anyFigure(0, 2000));

/** A display first, up to three other tanks, and a sump or none. */
export function anyTanks(safeguards: readonly Safeguard[]): fc.Arbitrary<Tank[]> {
  const roles = fc.array(
    fc.constantFrom('display', 'holding', 'quarantine', 'nursery', 'mixing', 'header', 'reservoir'),
    {
      maxLength: 3,
    },
  );
  return fc.tuple(roles, fc.boolean()).chain(([more, sump]) => {
    const all = ['display', ...more, ...(sump ? ['sump'] : [])] as Tank['role'][];
    return fc.tuple(...all.map((role, at) => anyTank(`tank-${at}`, role, safeguards)));
  });
}

function anyTank(key: string, role: Tank['role'], safeguards: readonly Safeguard[]): fc.Arbitrary<Tank> {
  const loss = maybe(anyFigure(0, 500).map((lossWPerK) => ({ lossWPerK })));
  const material = fc.constantFrom('glass', 'acrylic', 'concrete', 'insulated');
  const wall = fc
    .record({ material, thicknessMm: anyFigure(1, 100), areaM2: positive() })
    .map((given) => ({ wall: given }));
  const siphon = fc.record({
    siphonBreakMm: anyFigure(0, 100),
    siphonSafeguard: maybeSafeguard(safeguards, 'siphon-break'),
  });
  const fed = role !== 'sump' && role !== 'reservoir';
  const base = fc.record({
    key: fc.constant(key),
    name: anyName(),
    role: fc.constant(role),
    volumeL: positive(),
    surfaceM2: positive(),
    cover: fc.constantFrom('open', 'lidded'),
    rimMm: length(),
    drainDownMm: length(),
    outletMm: length(),
    drainAboveMm: length(),
    evaporationActivity: maybe(anyFigure(0, 2)),
    returnShare: fed ? maybe(anyFigure(0, 1)) : fc.constant(undefined),
    pumpDryMm: role === 'sump' ? length() : fc.constant(undefined),
  });
  return fc.tuple(base, fc.oneof(loss, wall), maybe(siphon)).map((parts) => Object.assign({}, ...parts) as Tank);
}
