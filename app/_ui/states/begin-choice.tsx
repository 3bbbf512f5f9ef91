import Link from '../frame/link';
import type { FormAction } from '../form/answer';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { ProofList } from './proof-list';
import { StateCautions } from './state-cautions';
import { BeginForm, type StatePlace } from './state-forms';
import { lastingSaid, type StateChoiceView, stateName } from './state-view';
import style from './states.module.css';

interface BeginChoiceProps {
  place: StatePlace;
  choice: StateChoiceView;
  equipment: string[];
  begin: FormAction<unknown>;
}

/** A state that a system can be put into, behind its name: how it ends, what is to be minded, and its form. */
export function BeginChoice({ place, choice, equipment, begin }: BeginChoiceProps) {
  return (
    <Fold title={`${stateName(choice.state)}, usually ${lastingSaid(choice.lastsMin)}`}>
      {choice.isDescribed ? null : (
        <p className={style.small}>
          The description of this system does not speak of this state, so no plan and no review reckons with it.
        </p>
      )}
      <p className={style.small}>
        {choice.hasHandsIn
          ? 'Hands are in the water: it never ends by itself.'
          : choice.endsItself
            ? 'A device ends it.'
            : 'A person ends it.'}
      </p>
      {choice.stopsAir ? (
        <p>
          It stops what brings oxygen in:{' '}
          <Link href={siteAddress(place.site, 'states', place.system, choice.state)}>
            see how long the oxygen lasts, and begin it there
          </Link>
          .
        </p>
      ) : (
        <>
          <StateCautions state={choice.state} equipment={equipment} />
          <ProofList proofs={choice.proofs} />
          <BeginForm place={place} choice={choice} begin={begin} />
        </>
      )}
    </Fold>
  );
}
