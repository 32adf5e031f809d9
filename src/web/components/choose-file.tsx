// A button that opens the file chooser and hands over the file's text.

import { FileTrigger } from 'react-aria-components';
import { readTextFile } from '../app/read-file.ts';
import { Button, type ButtonKind } from './button.tsx';

export interface ChooseFileProps {
  readonly label: string;
  readonly kind?: ButtonKind;
  /** File name endings and media types: `['.csv', 'text/csv']`. */
  readonly accept: readonly string[];
  readonly disabled?: boolean;
  readonly onText: (text: string, name: string) => void;
}

export function ChooseFile({ label, kind = 'quiet', accept, disabled = false, onText }: ChooseFileProps) {
  return (
    <FileTrigger
      acceptedFileTypes={[...accept]}
      onSelect={async (files) => {
        const file = files?.[0];
        if (file) onText(await readTextFile(file), file.name);
      }}
    >
      <Button kind={kind} isDisabled={disabled}>
        {label}
      </Button>
    </FileTrigger>
  );
}
