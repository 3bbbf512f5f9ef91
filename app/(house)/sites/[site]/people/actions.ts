'use server';

import { act } from '#server/gate/act';
import { changeRole, changeRoleShape } from '#server/people/change-role';
import { erasePerson, erasePersonShape } from '#server/people/erase-person';
import { invite, inviteShape } from '#server/people/invite';
import { letGo, letGoShape } from '#server/people/let-go';
import { linkToRota, linkToRotaShape } from '#server/people/link-to-rota';
import { makeLinkShape, makeMemberLink } from '#server/people/make-link';

/** The page one is on says something else once one of these is done. */
const here = () => ['/'];

export const inviteAction = act(inviteShape, invite, here);

export const changeRoleAction = act(changeRoleShape, changeRole, here);

export const linkToRotaAction = act(linkToRotaShape, linkToRota, here);

export const makeLinkAction = act(makeLinkShape, makeMemberLink);

export const letGoAction = act(letGoShape, letGo, here, { always: true });

export const erasePersonAction = act(erasePersonShape, erasePerson, here);
