'use client';

import type { Custom } from '#core/units/shown';
import { useEffect, useMemo, useSyncExternalStore } from 'react';
import { KeptHere } from './kept-here';
import { LabelFound } from './label-found';
import { NotHere } from './not-here';
import { SiteChoice } from './site-choice';
import { useKept } from './use-kept';
import { useOffline } from './use-offline';
import { type OpenWalk, openWalks, roundView, walkKey } from './view';
import { WalkList } from './walk-list';
import { WalkPlace } from './walk-place';
import { WalkRound } from './walk-round';
import { hashOf, type Where, whereIs } from './where';

/** The page by which rounds are walked, with a signal or without. It fetches and keeps by itself what it shows. */
export function WalkApp({ units }: { units: Custom }) {
  const hash = useSyncExternalStore(
    onHash,
    () => location.hash,
    () => null,
  );
  const ready = useOffline();
  if (hash === null) return <p>Opening the rounds that are kept here…</p>;
  const where = whereIs(hash);
  if (where.at === 'start') return <SiteChoice ready={ready} />;
  return <AtSite key={where.site} where={where} units={units} ready={ready} />;
}

interface AtSiteProps {
  where: Exclude<Where, { at: 'start' }>;
  units: Custom;
  ready: ReturnType<typeof useOffline>;
}

function AtSite({ where, units, ready }: AtSiteProps) {
  const { kept, others, line, meet, account, unsent } = useKept(where.site);
  const walks = useMemo(() => (kept?.pack ? openWalks(kept, kept.pack) : []), [kept]);
  const title = kept?.pack?.site.name ?? 'Rounds';
  useEffect(() => {
    document.title = `Rounds, ${title} · Holdfast`;
  }, [title]);
  if (!kept?.pack || account === null) return <NotHere site={where.site} line={line} others={others} meet={meet} />;
  const { pack } = kept;
  const whose = { account, site: where.site };
  const walk = 'walk' in where ? walks.find(({ named }) => walkKey(named) === where.walk) : undefined;
  const status = <KeptHere kept={kept} unsent={unsent} others={others} line={line} meet={meet} ready={ready} />;
  if (where.at === 'label') return <LabelFound where={where} walks={walks} pack={pack} status={status} />;
  if (!walk || where.at === 'site') return <WalkList whose={whose} walks={walks} pack={pack} status={status} />;
  return (
    <OneWalk
      where={where}
      walk={walk}
      kept={kept}
      units={units}
      status={status}
      whose={whose}
      meet={meet}
      hasSignal={line.state !== 'unreached'}
    />
  );
}

interface OneWalkProps {
  where: Extract<Where, { walk: string }>;
  walk: OpenWalk;
  kept: Parameters<typeof openWalks>[0];
  units: Custom;
  status: React.ReactNode;
  whose: { account: string; site: string };
  meet: () => Promise<void>;
  hasSignal: boolean;
}

function OneWalk({ where, walk, kept, units, status, whose, meet, hasSignal }: OneWalkProps) {
  const { pack, photos } = kept;
  const page = useMemo(() => (pack ? roundView(walk, pack) : null), [walk, pack]);
  if (!pack || !page) return null;
  const on = { ...whose, walk: walk.named };
  const at = (place?: number) =>
    hashOf(place === undefined ? { ...where, at: 'walk' } : { at: 'place', site: where.site, walk: where.walk, place });
  const place = where.at === 'place' ? page.places[where.place - 1] : undefined;
  const shown = { page, on, at, status, units, photos, meet, hasSignal, signing: walk.signing };
  return place ? <WalkPlace key={place.number} {...shown} place={place} /> : <WalkRound {...shown} />;
}

function onHash(tell: () => void): () => void {
  window.addEventListener('hashchange', tell);
  return () => window.removeEventListener('hashchange', tell);
}
