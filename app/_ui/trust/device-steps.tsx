import style from './trust.module.css';

/**
 * How one kind of device comes to trust the authority, and how it ceases to.
 * @param file name of what it takes
 */
export function DeviceSteps({
  title,
  file,
  steps,
  remove,
}: {
  title: string;
  file: string;
  steps: readonly string[];
  remove: string;
}) {
  return (
    <details className={style.device}>
      <summary>{title}</summary>
      <p>
        <a href={`/api/trust/${file}`} download className={style.take}>
          {file.endsWith('.crt') ? 'Take the certificate' : 'Take the profile'}
        </a>
      </p>
      <ol>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <p>To take it back: {remove}</p>
    </details>
  );
}
