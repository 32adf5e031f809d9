// Where a spec may be kept, in one list: practice sheets, the student's own copies of units, the library.

import type { CourseRow } from '#contract';
import { SelectField } from '../../components/field.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useCourse, useStudio, useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';

const says = words.materials.keeping;

/** A place is `practice course:…`, `unit:…` or `course-unit:…`. */
export const onSheetOf = (course: CourseRow): string => `practice ${course.id}`;

/** By the learner's name alone, with the instrument where they learn several. */
const sheetName = ({ id, learner, instrumentName }: CourseRow, all: readonly CourseRow[]): string =>
  all.some((one) => one.learner === learner && one.id !== id)
    ? says.sheetOfOne(learner, instrumentName)
    : says.sheetOf(learner);

interface PlaceFieldProps {
  readonly kind: 'sheet' | 'backing';
  readonly courses: readonly CourseRow[];
  readonly course: CourseRow | null;
  readonly place: string;
  readonly onPlace: (place: string) => void;
}

export function PlaceField({ kind, courses, course, place, onPlace }: PlaceFieldProps) {
  const units = useUnits().data?.units ?? [];
  const copies = useCourse(course?.id ?? null).data?.units ?? [];
  const options = [
    ...courses.map((one) => ({
      value: onSheetOf(one),
      label: sheetName(one, courses),
      group: says.sheets,
    })),
    ...copies.map((unit) => ({
      value: String(unit.id),
      label: unit.title,
      group: says.copiesOf(course?.learner ?? ''),
    })),
    ...units
      .filter((unit) => !unit.retired)
      .map((unit) => ({ value: String(unit.id), label: unit.title, group: says.library })),
  ];
  if (options.length === 0) return <p className="soft">{says.noPlace}</p>;
  return (
    <SelectField
      label={says.place}
      value={place}
      options={[{ value: '', label: words.frame.choose }, ...options]}
      onValue={onPlace}
      help={
        place.startsWith('practice ')
          ? says.sheetHelp
          : place.startsWith('course-unit:')
            ? says.copyHelp
            : place.startsWith('unit:')
              ? kind === 'backing'
                ? says.backingHelp
                : says.libraryHelp
              : undefined
      }
    />
  );
}

interface SheetFieldProps {
  readonly of: CourseRow;
  readonly lesson: string;
  readonly onLesson: (lesson: string) => void;
}

/** Which of the student's open sheets; the latest is the week's. */
export function SheetField({ of: { sheets }, lesson, onLesson }: SheetFieldProps) {
  const format = useFormat();
  const today = useStudio().data?.today ?? '';
  const options = sheets.map(({ lesson: value, date }) => ({
    value: String(value),
    label: (date <= today ? says.latest : says.coming)(format.day(date, 'short')),
  }));
  if (options.length === 1) return <p className="soft">{options[0]?.label}</p>;
  return <SelectField label={says.week} value={lesson} options={options} onValue={onLesson} />;
}
