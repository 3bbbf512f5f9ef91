'use client';

import { useId } from 'react';
import type { FormAction } from '../form/answer';
import { KeptForm } from '../safeguards/kept-form';
import type { LineView } from './round-view';

interface AddPhotoProps {
  site: string;
  round: string;
  line: LineView;
  /** Id of the next photo, so that one that is sent twice is kept once. */
  next: string;
  add: FormAction<unknown>;
}

/** Adds a photo to what was entered on a line, or takes the photo that the line asks for. */
export function AddPhoto({ site, round, line: { check, entries, nextEntry }, next, add }: AddPhotoProps) {
  const id = useId();
  const stands = entries.at(-1);
  return (
    <KeptForm
      key={stands?.id ?? 'first'}
      action={add}
      hidden={{ site, round, check: check.key, ...(stands ? {} : { first: 'yes' }) }}
      ids={{ entry: stands?.id ?? nextEntry, photo: next }}
      labels={{ picture: 'Photo', photo: 'Photo' }}
      button={stands ? 'Add this photo' : 'Save this photo'}
      done="The photo is kept."
    >
      <label htmlFor={id}>
        {stands ? 'A photo of it' : 'The photo'}
        <input id={id} name="picture" type="file" accept="image/*" capture="environment" required />
      </label>
    </KeptForm>
  );
}
