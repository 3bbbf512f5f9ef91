'use client';

import { type Standing, standing } from '#core/rounds/due';
import type { WalkPack } from '#core/rounds/pack';
import { type ReactNode, useState } from 'react';
import { Page } from '../frame/page';
import { Section } from '../frame/section';
import { roundsAddress } from '../rounds/round-view';
import { StandingMark } from '../rounds/standing-mark';
import { Ledger } from '../table/ledger';
import { momentSaid } from '../words/moment';
import { clock } from './device';
import { makeBesides } from './make';
import type { Whose } from './store';
import { type OpenWalk, walkKey } from './view';
import style from './walk.module.css';
import { hashOf } from './where';

interface WalkListProps {
  whose: Whose;
  walks: OpenWalk[];
  pack: WalkPack;
  status: ReactNode;
}

/** The rounds that can be walked here, those of the timetable in order, then those besides it. */
export function WalkList({ whose, walks, pack, status }: WalkListProps) {
  const { site } = pack;
  return (
    <Page title={`Rounds, ${site.name}`} lead={<p>Times are those of the site ({site.zone}).</p>}>
      {status}
      <p>
        <a className={style.go} href={hashOf({ at: 'label', site: site.key, code: null })}>
          Scan the label of a tank
        </a>
      </p>
      <Section id="walk" title="To be walked" wide>
        {walks.length === 0 ? (
          <p>Nothing is due today or tomorrow.</p>
        ) : (
          <Ledger
            caption="The earliest first."
            columns={[
              { id: 'due', head: 'Due', cell: (walk) => dueSaid(walk, site.zone) },
              { id: 'name', head: 'Round', cell: (walk) => <Name site={site.key} walk={walk} /> },
              {
                id: 'state',
                head: 'State',
                cell: (walk) => (
                  <>
                    <StandingMark standing={standingOf(walk)} />
                    {walk.signed && walk.signedAt === null ? '; waits for the second signature' : null}
                  </>
                ),
              },
            ]}
            rows={walks}
            keyOf={({ named }) => walkKey(named)}
          />
        )}
      </Section>
      <Section id="besides" title="Besides the timetable" note="After an alarm, or when one was missed.">
        <Besides whose={whose} pack={pack} />
      </Section>
      <p>
        <a className={style.go} href={roundsAddress(site.key)}>
          All rounds and what was walked (needs a signal)
        </a>
      </p>
    </Page>
  );
}

function Name({ site, walk }: { site: string; walk: OpenWalk }) {
  if (standingOf(walk) === 'ahead') return walk.name;
  return (
    <a className={style.go} href={hashOf({ at: 'walk', site, walk: walkKey(walk.named) })}>
      {walk.round !== null || walk.items.length > 0 ? 'Go on with' : 'Begin'} {walk.name}
    </a>
  );
}

/** How a walk stands by the clock of this telephone. */
function standingOf({ timetable, begun, items, signedAt: here, signed }: OpenWalk): Standing {
  const signedAt = signed?.at ?? here;
  const made = items[0]?.madeAt ?? begun?.at ?? null;
  const ms = (at: string | null) => (at === null ? null : Date.parse(at));
  if (!timetable) return signedAt === null ? 'begun' : 'done';
  const { opensAt, lateAt, closesAt } = timetable;
  const walk = { opensAt: Date.parse(opensAt), lateAt: Date.parse(lateAt), closesAt: Date.parse(closesAt) };
  return standing(walk, ms(made), ms(signedAt), clock());
}

function dueSaid({ timetable, begun }: OpenWalk, zone: string): string {
  if (timetable) return momentSaid(timetable.due, zone);
  return begun ? `besides, from ${momentSaid(begun.at, zone)}` : 'besides';
}

function Besides({ whose, pack }: { whose: Whose; pack: WalkPack }) {
  const [said, setSaid] = useState<string | null>(null);
  const begin = async (sheet: WalkPack['besides'][number]) => {
    const begun = await makeBesides(whose, sheet);
    if (begun.ok) location.hash = hashOf({ at: 'walk', site: whose.site, walk: begun.value });
    else setSaid(begun.said);
  };
  return (
    <>
      <div className={style.buttons}>
        {pack.besides.map((sheet) => (
          <button key={sheet.slot} type="button" onClick={() => void begin(sheet)}>
            Walk {sheet.name} now
          </button>
        ))}
      </div>
      <p role="status">{said}</p>
    </>
  );
}
