// The terms with their dates and how many lessons stand in each.

import { useState } from 'react';
import type { TermView } from '#contract';
import { Button } from '../../components/button.tsx';
import { Empty } from '../../components/empty.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useFormat } from '../../hooks/use-format.ts';
import { newId } from '../../new-id.ts';
import { words } from '../../words/index.ts';
import { SpanDialog } from './span-dialog.tsx';

const says = words.term.terms;
type Term = TermView['terms'][number];

export interface TermListProps {
  readonly terms: TermView['terms'];
  readonly adding: boolean;
  readonly onAdding: (open: boolean) => void;
}

export function TermList({ terms, adding, onAdding }: TermListProps) {
  const send = useCommand();
  const format = useFormat();
  const [changing, setChanging] = useState<Term | null>(null);
  return (
    <section>
      <div className="section-line">
        <h2>{says.title}</h2>
        {terms.length > 0 && (
          <Button kind="plain" onPress={() => onAdding(true)}>
            {says.add}
          </Button>
        )}
      </div>
      {terms.length === 0 && (
        <Empty
          sentence={says.none}
          action={
            <Button kind="primary" onPress={() => onAdding(true)}>
              {says.add}
            </Button>
          }
        />
      )}
      <ul className="ruled term-list">
        {terms.map((term) => (
          <li key={term.id}>
            <span className="term-name">{term.name}</span>
            <span>
              {format.days(term.starts, term.ends)}{' '}
              <span className="faint term-lessons">{says.lessons(term.lessons)}</span>
            </span>
            <span className="term-acts no-print">
              <Button kind="plain" aria-label={says.change(term.name)} onPress={() => setChanging(term)}>
                {words.frame.change}
              </Button>
              <Button
                kind="plain"
                aria-label={says.removeNamed(term.name)}
                onPress={() => void send({ type: 'term.remove', term: term.id })}
              >
                {says.remove}
              </Button>
            </span>
          </li>
        ))}
      </ul>
      {(adding || changing) && (
        <SpanDialog
          title={changing ? says.changeTitle : says.addTitle}
          action={says.save}
          placeholder={says.namePlaceholder}
          start={{
            name: changing?.name ?? '',
            starts: changing?.starts ?? '',
            ends: changing?.ends ?? '',
            endsOptional: false,
          }}
          onSave={async (span) => {
            const term = { id: changing?.id ?? newId('term'), ...span };
            return (await send({ type: 'term.put', term })) !== null;
          }}
          onClose={() => {
            setChanging(null);
            onAdding(false);
          }}
        />
      )}
    </section>
  );
}
