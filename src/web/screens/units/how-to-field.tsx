// Markdown as it is written, and how it reads.

import { useState } from 'react';
import { Button } from '../../components/button.tsx';
import { TextField } from '../../components/field.tsx';
import { MarkdownText } from '../../components/markdown.tsx';
import { words } from '../../words/index.ts';

const says = words.units.editor;

export interface HowToFieldProps {
  readonly label: string;
  readonly help?: string;
  readonly fault: string | null;
  readonly value: string;
  readonly onValue: (value: string) => void;
}

export function HowToField({ label, help, fault, value, onValue }: HowToFieldProps) {
  const [reading, setReading] = useState(false);
  return (
    <div className="editor-how-to">
      {reading ? (
        <section className="field" aria-label={label}>
          <span className="field-label">{label}</span>
          <MarkdownText text={value} />
        </section>
      ) : (
        <TextField label={label} help={help} fault={fault} rows={4} value={value} onValue={onValue} />
      )}
      {(value.trim() !== '' || reading) && (
        <Button kind="plain" className="editor-turn" onPress={() => setReading(!reading)}>
          {reading ? says.write : says.preview}
        </Button>
      )}
    </div>
  );
}
