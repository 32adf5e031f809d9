// The sheet as it will lie on the stand: pages under each other, with what was shaped to the player, or why it cannot be made.

import type { SheetState } from '../../engraver/use-sheet.ts';
import { useHeard } from '../../hooks/use-heard.ts';
import { PlayableSheet } from '../../sound/playable-sheet.tsx';
import { words } from '../../words/index.ts';

const says = words.materials;

export function SheetView({ answer, isDrawing }: SheetState) {
  const drawn = answer?.ok ? answer.value.sheet.title : null;
  const heard = useHeard(isDrawing || drawn === null ? null : answer, says.drawn(drawn ?? ''));
  return (
    <section className="sheet-view" aria-label={says.sheet} aria-busy={isDrawing}>
      <p className="only-heard" role="status">
        {heard}
      </p>
      {answer === null ? (
        <p className="soft" role="status">
          {says.loading}
        </p>
      ) : answer.ok ? (
        <>
          {answer.value.sheet.notes.length > 0 && (
            <div className="sheet-notes no-print">
              <h2 className="only-heard">{says.notesTitle}</h2>
              <ul>
                {answer.value.sheet.notes.map((note) => (
                  <li key={note.text}>{note.text}</li>
                ))}
              </ul>
            </div>
          )}
          <PlayableSheet
            drawn={answer.value}
            seed={answer.value.sheet.seed}
            frame={(page, drawing) => (
              <figure
                className="sheet-page"
                aria-label={
                  answer.value.pages.length > 1 ? says.page(page, answer.value.pages.length) : says.sheet
                }
              >
                {drawing}
              </figure>
            )}
          />
        </>
      ) : (
        <div className="sheet-refused" role="alert">
          <h2>{says.refusedTitle}</h2>
          <p>{answer.error.message}</p>
        </div>
      )}
    </section>
  );
}
