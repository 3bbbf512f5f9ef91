import type { Proof } from '#core/states/proofs';
import type { Proved } from '#core/states/proved';
import type { Custom } from '#core/units/shown';
import { figure } from '../units/figures';
import { momentSaid } from '../words/moment';

/** A proof with what readings say of it. */
export interface ProofView {
  proof: Proof;
  proved: Proved;
}

/** What proves, in a sentence without a full stop. */
export function proofSaid(proof: Proof): string {
  switch (proof.kind) {
    case 'watts':
      return proof.range
        ? `${proof.equipment} draws ${proof.range.minW} to ${proof.range.maxW}\u00a0W while it runs`
        : `${proof.equipment} runs: no watts range is known, so see or feel that it does`;
    case 'off':
      return `${proof.equipment} is off again`;
    case 'flow':
      return proof.sensor === null
        ? 'the return flows: no flow sensor, so look at the outlet'
        : `the return flows: “${proof.sensor}” reads as usual`;
    case 'level':
      return proof.sensor === null
        ? 'the level is back at its mark'
        : `the level is back: “${proof.sensor}” reads as usual`;
    case 'shut':
      return `${proof.equipment}: its waste is shut`;
    case 'ozone':
      return `${proof.equipment}: valve, feed gas, dose and interlocks stand as before`;
    case 'oxidant':
      return proof.sensor === null
        ? 'no oxidant is left in the water: no sensor, so test it'
        : `no oxidant is left in the water: “${proof.sensor}” reads below its alarm`;
  }
}

/** What a reading says of a proof: "“Return meter” read 52 W at 14:02". Null when none says anything. */
export function readingSaid({ by }: Proved, units: Custom, zone: string): string | null {
  if (by === null) return null;
  return `“${by.sensor}” read ${valueSaid(by, units)} ${momentSaid(new Date(by.atMs).toISOString(), zone)}`;
}

function valueSaid({ quantity, value }: NonNullable<Proved['by']>, units: Custom): string {
  if (quantity === 'flow') return figure(units, 'flow', value);
  if (quantity === 'level') return `${figure(units, 'length', value)} from its mark`;
  return quantity === 'watts' ? `${Math.round(value)}\u00a0W` : `${value.toFixed(2)}\u00a0mg/L`;
}
