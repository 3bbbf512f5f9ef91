import { gravestOutcome } from '../gravest';
import type { Judgement } from '../result';
import type { Combination, Part } from '../study';
import type { Subject } from '../trial';

/** A failure mode of a thing as a part of a combination. */
export function faultPart({ fault, thing }: Subject): Part {
  return { kind: 'fault', fault: fault.id, title: fault.title, thing };
}

/** Stable name of a part. */
export function partId(part: Part): string {
  return part.kind === 'fault' ? `${part.fault}:${part.thing.key}` : `without:${part.key}`;
}

/** A combination with what came of it. */
export function combined({
  judgement,
  ...given
}: Omit<Combination, 'id' | 'verdict' | 'harm' | 'spareS'> & { judgement: Judgement }): Combination {
  const { verdict, outcome, spareS } = gravestOutcome(judgement);
  return {
    id: `${given.kind}:${given.parts.map(partId).join('+')}:${given.state}`,
    ...given,
    verdict,
    harm: outcome?.harm ?? null,
    spareS: Number.isFinite(spareS) ? spareS : null,
  };
}
