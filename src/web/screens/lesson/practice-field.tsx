import { useId } from 'react';
import type { LessonView } from '#contract';
import { words } from '../../words/index.ts';
import { useKeptText } from './use-kept-text.ts';

export interface PracticeFieldProps {
  readonly told: LessonView;
  readonly post: (base: string, text: string) => void;
  readonly rows?: number;
}

/**
 * The practice to set. While none was written the suggestion stands in the field; the first change makes it the
 * teacher's own, and closing the lesson sets it as it stands.
 */
export function PracticeField({ told, post, rows = 4 }: PracticeFieldProps) {
  const { id: lesson, practice: stored, courseRevision: revision } = told;
  const text = useKeptText({ field: `${lesson} practice`, stored, revision }, post);
  const id = useId();
  const suggested = text.value() === '' && told.practice === '';
  return (
    <div className="kept-note">
      <label htmlFor={id} className="lesson-label">
        {words.lesson.closing.practice}
      </label>
      <textarea
        id={id}
        className="kept-note-text"
        aria-describedby={`${id}-help`}
        rows={rows}
        value={suggested ? told.suggestedPractice : text.value()}
        // A suggestion that was emptied is a decision for no practice: a blank keeps it from coming back.
        onChange={(event) => text.change(event.target.value === '' && suggested ? ' ' : event.target.value)}
        onFocus={text.take}
        onBlur={text.leave}
        onKeyDown={(event) => {
          if (event.key === 'Escape') event.currentTarget.blur();
        }}
      />
      <p id={`${id}-help`} className="kept-note-help">
        {suggested && told.suggestedPractice !== '' && `${words.lesson.closing.practiceSuggested} `}
        {words.lesson.closing.practiceHelp}
      </p>
      <p className="kept-note-care">{words.lesson.closing.care}</p>
    </div>
  );
}
