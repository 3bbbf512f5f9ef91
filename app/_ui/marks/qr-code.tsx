import { qrPath } from './qr-path';
import style from './qr-code.module.css';

/**
 * A QR code: dark on white in any light, since a camera reads no other.
 * @param text what it holds
 * @param said what it is for, for whoever cannot see it
 */
export function QrCode({ text, said }: { text: string; said: string }) {
  const { size, path } = qrPath(text);
  return (
    <svg
      className={style.code}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={said}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
