/** A holdfast: the root of a kelp that grips the rock. Decoration beside the name. */
export function Emblem() {
  return (
    <svg
      viewBox="0 0 24 24"
      width="24"
      height="24"
      aria-hidden="true"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.75"
    >
      <path d="M12 2v9M12 11c0 4-3 4-5 9M12 11c0 4 3 4 5 9M12 11v9" strokeLinecap="round" />
      <path d="M3 21h18" strokeWidth="2.25" />
    </svg>
  );
}
