import { cache } from 'react';
import { ask } from '#server/gate/ask';
import { getRound, getRoundShape } from '#server/rounds/get-round';

/** The parts of an address that name a round, as the browser sent them. */
export interface RoundParams {
  site: string;
  round: string;
}

const asked = ask(getRoundShape, getRound);
const once = cache((site: string, round: string) => asked({ site, round }));

/** A round by its address, asked for once a request. */
export function askRound({ site, round }: RoundParams) {
  return once(decodeURIComponent(site), decodeURIComponent(round));
}
