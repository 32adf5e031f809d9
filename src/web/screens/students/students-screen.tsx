// Students: the list, search, groups; adding and changing in a dialog over it.

import { useMemo, useState } from 'react';
import { Link, useLocation, useSearchParams } from 'wouter';
import type { GroupView, StudentsView } from '#contract';
import { type Id, isId } from '#core';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { NextStep } from '../../components/next-step.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useStudents, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { findStudents } from './find-students.ts';
import { GroupDialog } from './group-dialog.tsx';
import { StudentDialog } from './student-dialog.tsx';
import { StudentTable } from './student-table.tsx';
import './students.css';

const says = words.students;

interface StudentListProps {
  readonly view: StudentsView;
  readonly onAdd: () => void;
  readonly onChange: (student: Id<'student'>) => void;
}

function StudentList({ view, onAdd, onChange }: StudentListProps) {
  const [text, setText] = useState('');
  const [withLeft, setWithLeft] = useState(false);
  const left = view.students.filter((s) => !s.here).length;
  const found = useMemo(
    () => findStudents(view.students, text).filter((s) => withLeft || s.here || text !== ''),
    [view.students, text, withLeft],
  );
  if (view.students.length === 0) {
    return (
      <Empty
        sentence={says.none}
        action={
          <>
            <Button kind="primary" onPress={onAdd}>
              {says.add}
            </Button>
            <ButtonLink to="/students/import">{says.importing}</ButtonLink>
          </>
        }
      />
    );
  }
  return (
    <>
      <div className="students-find no-print">
        <TextField
          label={says.search}
          labelHidden
          type="search"
          placeholder={says.searchPlaceholder}
          value={text}
          onValue={setText}
        />
        <p className="faint" role="status">
          {says.count(found.length)}
        </p>
      </div>
      {found.length === 0 ? (
        <p className="soft">{says.noneFound(text)}</p>
      ) : (
        <StudentTable students={found} onChange={onChange} />
      )}
      <p className="faint students-foot">{says.paceHelp}</p>
      {left > 0 && !withLeft && text === '' && (
        <Button kind="plain" onPress={() => setWithLeft(true)}>
          {says.showLeft(left)}
        </Button>
      )}
    </>
  );
}

function Groups({
  view,
  onOpen,
}: {
  readonly view: StudentsView;
  readonly onOpen: (g: GroupView | 'new') => void;
}) {
  const [withEnded, setWithEnded] = useState(false);
  const format = useFormat();
  // Of a group that is over, everybody who was in it.
  const namesOf = ({ members, ended }: GroupView) =>
    view.students.filter((s) => (s.here || ended !== null) && members.includes(s.id)).map((s) => s.name);
  const over = view.groups.filter((group) => group.ended !== null);
  const running = view.groups.filter((group) => group.ended === null);
  const shown = withEnded ? [...running, ...over] : running;
  return (
    <section className="students-groups">
      <div className="section-line">
        <h2>{says.groups.title}</h2>
        <Button kind="plain" onPress={() => onOpen('new')}>
          {says.groups.add}
        </Button>
      </div>
      {view.groups.length === 0 ? (
        <p className="soft">{says.groups.none}</p>
      ) : (
        <ul className="ruled">
          {shown.map((group) => (
            <li key={group.id} className={group.ended === null ? undefined : 'students-left'}>
              <span>
                <span className="students-name">
                  <GroupName group={group} />
                </span>
                {group.ended !== null && (
                  <span className="faint"> {says.groups.ended(format.day(group.ended, 'long'))}</span>
                )}
              </span>
              <span className="soft">{namesOf(group).join(', ')}</span>
              <Button kind="plain" aria-label={says.changeNamed(group.name)} onPress={() => onOpen(group)}>
                {says.change}
              </Button>
            </li>
          ))}
        </ul>
      )}
      {over.length > 0 && !withEnded && (
        <Button kind="plain" onPress={() => setWithEnded(true)}>
          {says.groups.showEnded(over.length)}
        </Button>
      )}
    </section>
  );
}

/** The group's course stands on its members' pages, so the name leads to the first of them. */
function GroupName({ group }: { readonly group: GroupView }) {
  const [member] = group.members;
  const [course] = group.courses;
  if (member === undefined || course === undefined) return group.name;
  return <Link href={`/student/${member}?course=${course}`}>{group.name}</Link>;
}

export function StudentsScreen() {
  const view = useStudents();
  const studio = useStudio().data;
  const [, navigate] = useLocation();
  const [search, setSearch] = useSearchParams();
  const [group, setGroup] = useState<GroupView | 'new' | null>(null);
  const wanted = search.get('change') ?? '';
  const open = search.has('add') || isId('student', wanted);
  const empty = view.data?.students.length === 0;
  return (
    <Page
      title={says.title}
      actions={
        empty ? null : (
          <>
            <ButtonLink to="/students/import">{says.importing}</ButtonLink>
            <Button kind="primary" onPress={() => setSearch({ add: '' })}>
              {says.add}
            </Button>
          </>
        )
      }
    >
      <Loaded view={view}>
        {(data) => (
          <>
            <NextStep after="students" />
            <StudentList
              view={data}
              onAdd={() => setSearch({ add: '' })}
              onChange={(student) => setSearch({ change: student })}
            />
            {data.students.length > 1 && <Groups view={data} onOpen={setGroup} />}
            {group !== null && studio && (
              <GroupDialog
                group={group === 'new' ? null : group}
                students={data.students}
                today={studio.today}
                onClose={() => setGroup(null)}
              />
            )}
          </>
        )}
      </Loaded>
      <StudentDialog
        open={open}
        student={isId('student', wanted) ? wanted : null}
        onClose={(student) => {
          // The first student leads straight on to the course, where a unit can be given.
          if (student && empty) navigate(`/student/${student}`);
          else setSearch({});
        }}
      />
    </Page>
  );
}
