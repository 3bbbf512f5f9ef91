import 'server-only';
import { byTwo } from '#core/rounds/by-two';
import type { KeptRound } from '#data/rounds/round-row';
import type { looksTakenBack, Signature } from '#data/rounds/signatures';
import type { RoundPage } from './round-page';

/** A round as it is told: when it was due, who began it, signed it and looked at it again. */
export function toldRound(
  { id, name, slotId, sheetId, dueAt, begunAt, begunBy, sheet }: KeptRound,
  signatures: readonly Signature[],
  taken: Awaited<ReturnType<typeof looksTakenBack>>,
  nameOf: (account: string) => string,
): RoundPage['round'] {
  return {
    id,
    name,
    isBesides: slotId === null && sheetId === null,
    dueAt: dueAt.toISOString(),
    begun: { at: begunAt.toISOString(), by: nameOf(begunBy) },
    signed: signatureOf(signatures, 'signed', nameOf),
    second: signatureOf(signatures, 'second', nameOf),
    byTwo: byTwo(sheet),
    secondLook: signatureOf(signatures, 'second-look', nameOf),
    looksTaken: taken.map(({ at, by, note, taken: back }) => ({
      ...{ at: at.toISOString(), by: nameOf(by), note },
      taken: { at: back.at.toISOString(), by: nameOf(back.by), reason: back.reason },
    })),
  };
}

function signatureOf(signatures: readonly Signature[], kind: Signature['kind'], nameOf: (id: string) => string) {
  const done = signatures.find((one) => one.kind === kind);
  return done ? { id: done.id, at: done.at.toISOString(), by: nameOf(done.by), note: done.note } : null;
}
