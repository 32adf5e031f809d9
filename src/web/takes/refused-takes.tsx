// Takes that waited in this browser and were refused when they came to the studio: nobody can play them again, so they stay
// until they are taken after all or discarded on purpose.

import { useMemo, useState } from 'react';
import type { CommandOf } from '#contract';
import type { OutboxEntry } from '../app/outbox-queue.ts';
import { theOutbox } from '../app/the-outbox.ts';
import { showToast } from '../app/toasts.ts';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { useOutbox } from '../hooks/use-outbox.ts';
import { words } from '../words/index.ts';
import { base64ToBlob } from './blob-to-base64.ts';
import { formatLength, formatMegabytes } from './format-figure.ts';
import { saveSound } from './save-sound.ts';
import './refused-takes.css';

const say = words.takes.refused;

type Refused = OutboxEntry & { readonly command: CommandOf<'take.keep'> };
const isTake = (entry: OutboxEntry): entry is Refused => entry.command.type === 'take.keep';

/** Says that there are some, and leads to them; nothing where there are none. */
export function RefusedTakes() {
  const { refused, durable } = useOutbox();
  const [isOpen, setOpen] = useState(false);
  const takes = refused.filter(isTake);
  const close = () => setOpen(false);
  return (
    <>
      {takes.length > 0 && (
        <Button kind="plain" className="refused-mark no-print" onPress={() => setOpen(true)}>
          {say.mark(takes.length)}
        </Button>
      )}
      {isOpen && takes.length > 0 && (
        <Dialog title={say.title} open onClose={close} width="wide">
          <p>{say.lead}</p>
          {!durable && <p className="fault">{say.notDurable}</p>}
          <ul className="refused-takes">
            {takes.map((entry) => (
              <RefusedTake
                key={entry.id}
                entry={entry}
                hasLevel={refused.some(
                  ({ command }) => command.type === 'observe' && command.take === entry.command.take.id,
                )}
                onLast={takes.length === 1 ? close : () => undefined}
              />
            ))}
          </ul>
        </Dialog>
      )}
    </>
  );
}

interface RefusedTakeProps {
  readonly entry: Refused;
  /** Whether a level waits with it. */
  readonly hasLevel: boolean;
  /** Told when it goes and none is left. */
  readonly onLast: () => void;
}

function RefusedTake({ entry, hasLevel, onLast }: RefusedTakeProps) {
  const [asks, setAsks] = useState(false);
  const { take, sound } = entry.command;
  const blob = useMemo(() => sound && base64ToBlob(sound.data, sound.type), [sound]);
  const facts = [
    words.takes.facts(formatLength(take.heard.seconds), take.heard.notes.length),
    blob ? say.sound(formatMegabytes(blob.size)) : words.takes.figuresOnly,
    ...(hasLevel ? [say.withLevel] : []),
  ];
  return (
    <li className="refused-take">
      <h3>{take.title}</h3>
      <p className="faint">{facts.join(' · ')}</p>
      <p>{entry.refused?.message}</p>
      <p className="soft">{blob ? say.toDo : say.toDoFigures}</p>
      {asks ? (
        <div className="refused-sure" role="alertdialog" aria-label={say.discardTitle(take.title)}>
          <p>{say.discardTitle(take.title)}</p>
          <p className="soft">{say.discardText}</p>
          <div className="refused-deeds">
            <Button autoFocus onPress={() => setAsks(false)}>
              {words.takes.leave}
            </Button>
            <Button
              kind="plain"
              onPress={() => {
                onLast();
                theOutbox.discard(entry.id);
                showToast({ text: say.discarded(take.title), about: 'take.keep' });
              }}
            >
              {say.discardDo}
            </Button>
          </div>
        </div>
      ) : (
        <div className="refused-deeds">
          <Button
            aria-label={say.again(take.title)}
            onPress={() => {
              onLast();
              theOutbox.tryAgain(entry.id);
            }}
          >
            {words.frame.tryAgain}
          </Button>
          {blob && (
            <Button aria-label={say.saveOf(take.title)} onPress={() => saveSound(blob, take.title)}>
              {say.save}
            </Button>
          )}
          <Button kind="plain" aria-label={say.discardOf(take.title)} onPress={() => setAsks(true)}>
            {words.takes.discard}
          </Button>
        </div>
      )}
    </li>
  );
}
