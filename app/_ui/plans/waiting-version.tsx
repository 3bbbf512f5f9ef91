import type { ReactNode } from 'react';
import { instantSaid } from '../words/instant';
import type { Speech } from '../words/said';
import type { PlanActions } from './answers';
import { type PlanPageData, type PlanVersionData, STATUS_WORDS } from './data';
import { PlanDifferenceTable } from './plan-lines-table';
import style from './plans.module.css';
import { VersionActions } from './version-actions';

interface WaitingProps {
  page: PlanPageData;
  version: PlanVersionData;
  inForce: PlanVersionData;
  speech: Speech;
  actions: PlanActions;
  /** What the review would say with it. */
  review: ReactNode;
}

/** A draft or a submitted version: what it says beside the plan in force, what the review would say, what can be done. */
export function WaitingVersion({ page, version, inForce, speech, actions, review }: WaitingProps) {
  const { site, system, equipment } = page;
  const { zone } = site;
  const [latest] = version.life.slice(-1);
  return (
    <article className={style.waiting}>
      <h3>
        Version {version.version}, {STATUS_WORDS[version.status]}
      </h3>
      <p>
        {latest ? instantSaid(latest.at.toISOString(), zone) : ''},{' '}
        {version.isOwn ? 'you' : (version.writtenBy ?? 'unknown')}: {version.reason}
      </p>
      <PlanDifferenceTable
        before={inForce.plan}
        after={version.plan}
        speech={speech}
        caption={`Beside version ${inForce.version}, which is in force.`}
      />
      {review}
      <VersionActions
        fields={{
          site: site.key,
          system: system.key,
          equipment: equipment.key,
          version: String(version.version),
          inForce: String(inForce.version),
        }}
        can={canDo(page, version)}
        actions={actions}
      />
    </article>
  );
}

/** What the person who looks may do with a version. */
export interface CanDo {
  submit: boolean;
  putInForce: boolean;
  /** They wrote it and nobody else may: they must say why. */
  onOwnWord: boolean;
  sendBack: boolean;
  withdraw: boolean;
  /** It waits for somebody else. */
  waits: boolean;
}

function canDo(page: PlanPageData, { status, isOwn }: PlanVersionData): CanDo {
  const isSubmitted = status === 'submitted';
  const isOthers = isSubmitted && !isOwn && page.mayApprove;
  const onOwnWord = isSubmitted && isOwn && page.mayApprove && page.isSoleKeeper;
  return {
    submit: status === 'draft' && isOwn && page.mayWrite,
    putInForce: isOthers || onOwnWord,
    onOwnWord,
    sendBack: isOthers,
    withdraw: isOwn && page.mayWrite,
    waits: isSubmitted && !isOthers && !onOwnWord,
  };
}
