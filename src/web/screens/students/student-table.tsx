// The students as a table: who, what they play, when they come next, how their pace compares.

import { Link } from 'wouter';
import type { StudentRow } from '#contract';
import type { Id } from '#core';
import { Button } from '../../components/button.tsx';
import { PaceMark } from '../../components/pace-mark.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { shortInstrument } from './student-draft.ts';

const says = words.students;

export interface StudentTableProps {
  readonly students: readonly StudentRow[];
  readonly onChange: (student: Id<'student'>) => void;
}

export function StudentTable({ students, onChange }: StudentTableProps) {
  const format = useFormat();
  return (
    <table className="students-table" aria-label={says.title}>
      <thead>
        <tr>
          <th scope="col">{says.columns.name}</th>
          <th scope="col" className="number">
            {says.columns.age}
          </th>
          <th scope="col">{says.columns.instruments}</th>
          <th scope="col">{says.columns.next}</th>
          <th scope="col">{says.columns.pace}</th>
          <th scope="col" className="no-print">
            <span className="only-heard">{says.columns.change}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {students.map((student) => (
          <tr key={student.id} className={student.here ? undefined : 'students-left'}>
            <th scope="row">
              <Link href={`/student/${student.id}`} className="students-name">
                {student.name}
              </Link>
              {student.siblings.length > 0 && (
                <span className="students-siblings faint">
                  {says.siblings.row(student.siblings.map(({ name }) => name))}
                </span>
              )}
              {student.left !== null && (
                <span className="faint">
                  {' '}
                  {(student.here ? says.leaves : says.left)(format.day(student.left, 'long'))}
                </span>
              )}
            </th>
            <td className="number">{student.age}</td>
            <td>
              {student.instruments.map((i) => (
                <span key={i.instrument} className="students-plays">
                  {shortInstrument(i.instrument)}{' '}
                  <span className="soft">{words.stageNames[i.stage].toLowerCase()}</span>
                </span>
              ))}
            </td>
            <td>
              {student.next ? (
                <Link href={`/lesson/${student.next.lesson}`}>
                  <span className="students-when">{format.day(student.next.date)}</span>{' '}
                  <span className="students-when">{format.time(student.next.time)}</span>
                </Link>
              ) : student.here && student.courses.length === 0 ? (
                <Link href={`/student/${student.id}`}>
                  {says.first.beginOne}
                  <span className="only-heard"> {says.first.beginFor(student.name)}</span>
                </Link>
              ) : (
                <span className="faint">{says.noNext}</span>
              )}
            </td>
            <td>
              {student.pacePercent !== null && (
                <span className="students-pace" title={says.paceSays(student.pacePercent)}>
                  <span className="students-percent">{says.pace(student.pacePercent)}</span>
                  <PaceMark percent={student.pacePercent} />
                  <span className="only-heard">{says.paceSays(student.pacePercent)}</span>
                </span>
              )}
            </td>
            <td className="no-print students-change">
              <Button
                kind="plain"
                aria-label={says.changeNamed(student.name)}
                onPress={() => onChange(student.id)}
              >
                {says.change}
              </Button>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
