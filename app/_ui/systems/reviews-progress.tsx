'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useTransition } from 'react';
import style from './reviews-progress.module.css';

/** How often the page asks again while reviews are under way, ms. */
const AGAIN = 2000;

/** Says how many reviews are done, and fetches the page anew until all are. */
export function ReviewsProgress({ done, all }: { done: number; all: number }) {
  const router = useRouter();
  const pending = done < all;
  const [isAsking, ask] = useTransition();
  useEffect(() => {
    // One question at a time: on a busy machine the next waits for the answer.
    if (!pending || isAsking) return;
    const timer = setTimeout(() => ask(() => router.refresh()), AGAIN);
    return () => clearTimeout(timer);
  }, [pending, isAsking, router]);
  return (
    <div role="status" className={pending ? style.progress : style.done}>
      {pending ? (
        <>
          <span>
            Reviews under way: {done} of {all} done. The page brings itself up to date.
          </span>
          <progress value={done} max={all} aria-label="Reviews done" />
        </>
      ) : null}
    </div>
  );
}
