import { lessonLength } from '#contract';
import { TextField, type TextFieldProps } from './field.tsx';

/** Asks how long a lesson is, in minutes; `isLessonLength` says whether what is typed can be. */
export function LessonLengthField(props: Omit<TextFieldProps, 'type' | 'min' | 'max'>) {
  return <TextField {...props} type="number" min={lessonLength.least} max={lessonLength.most} />;
}
