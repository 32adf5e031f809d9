import { Link } from 'wouter';
import type { StudentView } from '#contract';
import { words } from '../../words/index.ts';

const say = words.student.family;

/** Whose sibling a student is, whom to reach, and what the teacher has noted of this student. */
export function FamilyNotes({ student }: { readonly student: StudentView }) {
  const { family, note } = student;
  const siblings = family?.siblings ?? [];
  const contacts = [...(family?.contacts ?? []), ...student.contacts];
  return (
    <section className="student-part" aria-labelledby="family-title">
      <h2 id="family-title">{say.title}</h2>
      {siblings.length > 0 && (
        <p>
          {words.students.siblings.of}{' '}
          {siblings.map(({ id, name }, n) => (
            <span key={id}>
              {n > 0 && ', '}
              <Link href={`/student/${id}`}>{name}</Link>
            </span>
          ))}
        </p>
      )}
      {siblings.length + contacts.length === 0 && note === '' && <p className="soft">{say.none}</p>}
      <ul className="plain-list">
        {contacts.map((one) => (
          <li key={one.name + one.email + one.phone}>
            <span className="apart-title">{say.contact(one.name, one.relation)}</span>{' '}
            {one.phone && <a href={`tel:${one.phone.replace(/\s/g, '')}`}>{one.phone}</a>}{' '}
            {one.email && <a href={`mailto:${one.email}`}>{one.email}</a>}
          </li>
        ))}
      </ul>
      {note && <p className="student-note">{note}</p>}
    </section>
  );
}
