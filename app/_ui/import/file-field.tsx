import { type RefObject, useId } from 'react';
import style from './import.module.css';

interface FileFieldProps {
  text: string;
  change: (text: string) => void;
  area: RefObject<HTMLTextAreaElement | null>;
}

/** A facility file, chosen or pasted; a chosen file is read into the text, so that it can be mended here. */
export function FileField({ text, change, area }: FileFieldProps) {
  const file = useId();
  const pasted = useId();
  const read = async (chosen: File | undefined) => {
    if (chosen) change(await chosen.text());
  };
  return (
    <>
      <p className={style.choose}>
        <label htmlFor={file}>Choose a facility file, JSON or YAML</label>
        <input
          id={file}
          type="file"
          accept=".json,.yaml,.yml,application/json,application/yaml,text/yaml"
          onChange={(event) => void read(event.target.files?.[0])}
        />
      </p>
      <p className={style.paste}>
        <label htmlFor={pasted}>or paste it here</label>
        <textarea
          id={pasted}
          ref={area}
          name="text"
          value={text}
          onChange={(event) => change(event.target.value)}
          rows={16}
          spellCheck={false}
          wrap="off"
        />
      </p>
    </>
  );
}
