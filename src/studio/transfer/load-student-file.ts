// All that the studio keeps of one student, as plain data: for a family that asks for it, and before it is erased. What is
// written of a group as a whole is not in it.

import { coursesOfGroups } from '../erase/find-traces.ts';
import type { StudentId, Tables } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

type Rows = { readonly [T in keyof Tables]?: readonly Tables[T][] };

export interface StudentFile {
  readonly format: 'levare-student/1';
  readonly student: Tables['student'];
  /** Rows by table, as in the file of the whole studio; sounds in base64. */
  readonly tables: Rows;
  /** Lessons shared with a group: when, and whether the student was there. */
  readonly groups: readonly {
    readonly name: string;
    readonly lessons: readonly {
      readonly date: string;
      readonly time: string;
      readonly minutes: number;
      readonly status: string;
      readonly wasThere: boolean;
    }[];
  }[];
}

/** What is kept of a student, or null when there is none of this id. */
export async function loadStudentFile(reader: Reader, id: StudentId): Promise<StudentFile | null> {
  const student = await reader.get('student', id);
  if (student === null) return null;
  const where = { student: id };
  const courses = await reader.list('course', { where });
  const takes = await reader.list('take', { where, orderBy: ['date'] });
  const ofCourses = async <
    T extends 'courseUnit' | 'slot' | 'event' | 'lesson' | 'segment' | 'lessonMaterial' | 'setAside',
  >(
    table: T,
  ): Promise<readonly Tables[T][]> => {
    const lists: (readonly Tables[T][])[] = [];
    for (const course of courses)
      lists.push(await reader.list(table, { where: { course: course.id } as Partial<Tables[T]> })); // each has the column
    return lists.flat();
  };
  const observed = await reader.list('observation', { where, orderBy: ['date'] });
  const onCourses = [];
  for (const course of courses)
    onCourses.push(...(await reader.list('observation', { where: { course: course.id } })));
  const sounds: Tables['sound'][] = [];
  const soundData: Tables['soundData'][] = [];
  for (const { sound } of takes) {
    if (sound === null) continue;
    const kept = await reader.get('sound', sound);
    if (kept !== null) sounds.push(kept);
    soundData.push(...(await reader.list('soundData', { where: { sound } })));
  }
  const family = student.family === null ? null : await reader.get('family', student.family);
  return {
    format: 'levare-student/1',
    student,
    tables: {
      family: family === null ? [] : [family],
      consent: await reader.list('consent', { where, orderBy: ['givenOn'] }),
      course: courses,
      courseUnit: await ofCourses('courseUnit'),
      slot: await ofCourses('slot'),
      event: await ofCourses('event'),
      lesson: await ofCourses('lesson'),
      segment: await ofCourses('segment'),
      lessonMaterial: await ofCourses('lessonMaterial'),
      setAside: await ofCourses('setAside'),
      observation: [...new Map([...onCourses, ...observed].map((row) => [row.id, row])).values()],
      take: takes,
      sound: sounds,
      soundData,
    },
    groups: await loadGroups(reader, id),
  };
}

async function loadGroups(reader: Reader, id: StudentId): Promise<StudentFile['groups']> {
  const groups = (await reader.list('group')).filter(({ members }) => members.includes(id));
  const loaded: StudentFile['groups'][number][] = [];
  for (const group of groups) {
    const lessons: StudentFile['groups'][number]['lessons'][number][] = [];
    for (const course of await coursesOfGroups(reader, [group]))
      for (const { date, time, minutes, status, absent } of await reader.list('lesson', {
        where: { course: course.id },
        orderBy: ['date', 'time'],
      }))
        lessons.push({ date, time, minutes, status, wasThere: !(absent ?? []).includes(id) });
    loaded.push({ name: group.name, lessons });
  }
  return loaded;
}
