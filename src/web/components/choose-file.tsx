// A button that opens the file chooser and hands over the file's text.

import { useRef } from 'react';
import { readTextFile } from '../app/read-file.ts';
import { Button, type ButtonKind } from './button.tsx';

export interface ChooseFileProps {
  readonly label: string;
  readonly kind?: ButtonKind;
  /** File name endings and media types: `['.csv', 'text/csv']`. */
  readonly accept: readonly string[];
  /** The last file is being seen to: see Button. */
  readonly pending?: boolean;
  readonly onText: (text: string, name: string) => void;
}

export function ChooseFile({ label, kind = 'quiet', accept, pending = false, onText }: ChooseFileProps) {
  const input = useRef<HTMLInputElement>(null);
  const open = () => {
    if (!input.current) return;
    input.current.value = ''; // so that the same file, mended, is a choice again
    input.current.click();
  };
  return (
    <>
      <Button kind={kind} pending={pending} onPress={open}>
        {label}
      </Button>
      <input
        ref={input}
        type="file"
        hidden
        accept={accept.join(',')}
        onChange={async ({ currentTarget: { files } }) => {
          const file = files?.[0];
          if (file) onText(await readTextFile(file), file.name);
        }}
      />
    </>
  );
}
