'use client';

import { useEffect, useRef, useState } from 'react';
import style from './walk.module.css';

/** ms between two looks at the picture: fast enough for a hand, slow enough for a warm telephone. */
const LOOK_MS = 200;

/** Reads a QR label by the camera. What is read stays in this browser. @param found says whether it leads anywhere */
export function Scan({ found }: { found: (text: string) => boolean }) {
  const [isOn, setOn] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    if (!isOn || !video.current) return;
    return watch(
      video.current,
      (text) => {
        if (found(text)) setOn(false);
        else setSaid('This is no label of a tank of this site.');
      },
      setSaid,
    );
  }, [isOn, found]);
  return (
    <div>
      {isOn ? (
        // The picture of a camera has no sound and no words.
        <video ref={video} className={style.camera} muted playsInline aria-label="What the camera sees" />
      ) : null}
      <button type="button" className={style.main} onClick={() => setOn(!isOn)}>
        {isOn ? 'Close the camera' : 'Scan with the camera'}
      </button>
      <p role="status">{said}</p>
    </div>
  );
}

/** Watches through the camera until the answer is called. */
function watch(video: HTMLVideoElement, read: (text: string) => void, say: (said: string) => void): () => void {
  let stream: MediaStream | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;
  const begin = async () => {
    if (!navigator.mediaDevices) return say(NO_CAMERA);
    const [reader, opened] = await Promise.all([
      import('./qr-reader'),
      navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } }),
    ]);
    stream = opened;
    if (isOver) return stop(stream);
    video.srcObject = stream;
    await video.play();
    say('Hold the label before the camera.');
    const look = async () => {
      const text = video.readyState >= video.HAVE_CURRENT_DATA ? await reader.readQr(video) : null;
      if (text !== null) read(text);
      if (!isOver) timer = setTimeout(() => void look().catch(() => say(NO_CAMERA)), LOOK_MS);
    };
    await look();
  };
  void begin().catch(() => say(NO_CAMERA));
  return () => {
    isOver = true;
    clearTimeout(timer);
    if (stream) stop(stream);
  };
}

const NO_CAMERA =
  'The camera cannot be used here: it needs https, and your leave. Type the code that stands beneath the label instead.';

function stop(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
