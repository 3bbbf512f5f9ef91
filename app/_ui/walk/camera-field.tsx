'use client';

import { useId, useRef, useState } from 'react';
import type { LineView } from '../rounds/round-view';
import { newId } from './device';
import { makeEntry, makePhoto, type On } from './make';
import { makeSmaller } from './make-smaller';
import type { Photo } from './store';
import style from './walk.module.css';

/**
 * Takes a photo of a line: beside what was entered there, or as the entry itself, where a photo is what is asked for.
 */
export function TakePhoto({ on, line, photos }: { on: On; line: LineView; photos: readonly Photo[] }) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState<string | null>(null);
  const stands = line.entries.at(-1);
  const isAsked = line.check.kind === 'photo' && !stands;
  if (!stands && !isAsked) return null;
  const here = photos.filter(({ entry }) => entry === stands?.id).length;
  const take = async (file: File | undefined) => {
    if (!file) return;
    setSaid('Keeping the photo…');
    setSaid(await kept(on, line, file));
    if (input.current) input.current.value = '';
  };
  return (
    <div className={style.photo}>
      <label htmlFor={id}>{isAsked ? 'Take the photo' : 'Add a photo'}</label>
      <input
        id={id}
        ref={input}
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(event) => void take(event.target.files?.[0])}
      />
      <p role="status">
        {said} {here > 0 ? `Photos kept here and not sent yet: ${here}.` : null}
      </p>
    </div>
  );
}

/** Keeps a photo, with the entry that it is where there is none yet. @returns what is said of it */
async function kept(on: On, line: LineView, file: File): Promise<string> {
  const small = await makeSmaller(file);
  if (!small) return 'This is no picture that can be read.';
  const stands = line.entries.at(-1);
  const entry = stands?.id ?? newId();
  const photo = await makePhoto(on, entry, small);
  if (!photo.ok) return photo.said;
  if (stands) return 'The photo is kept.';
  const form = new FormData();
  form.set('entry', entry);
  form.set('photos', photo.value);
  const made = await makeEntry(on, line, form);
  return made.ok ? 'The photo is kept.' : made.said || 'The photo is kept, its entry is not.';
}
