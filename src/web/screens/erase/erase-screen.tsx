// Erasing a student for good: what goes, where the name stands elsewhere, what backups hold; then, with the name typed by
// hand, it is done, and nothing takes it back.

import { type FormEvent, type ReactNode, useId, useState } from 'react';
import { useLocation, useParams } from 'wouter';
import type { ErasureView } from '#contract';
import { eraseStudent } from '../../app/erase-student.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { TextField } from '../../components/field.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { Tick } from '../../components/tick.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { useErasure } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { NamesElsewhere } from './names-elsewhere.tsx';
import { isTyped, splitNames } from './typed-names.ts';
import '../../components/button.css';
import '../../components/form.css';
import './erase.css';

const say = words.erase;

export function EraseScreen() {
  const { id = '' } = useParams<{ id: string }>();
  const [called, setCalled] = useState<readonly string[]>([]);
  const view = useErasure(id, called);
  return (
    <Page title={view.data ? say.titleOf(view.data.name) : say.title} lead={say.lead}>
      <Loaded view={view}>
        {(erasure) => (
          <Erasing
            erasure={erasure}
            called={called}
            looking={view.isPlaceholderData}
            onCalled={(text) => setCalled(splitNames(text))}
          />
        )}
      </Loaded>
    </Page>
  );
}

interface ErasingProps {
  readonly erasure: ErasureView;
  readonly called: readonly string[];
  /** What is shown was found before another name was looked for. */
  readonly looking: boolean;
  readonly onCalled: (text: string) => void;
}

function Erasing({ erasure, called, looking, onCalled }: ErasingProps) {
  const format = useFormat();
  const [, go] = useLocation();
  /** Places whose tick the teacher has changed. */
  const [turned, setTurned] = useState<readonly string[]>([]);
  const [inCopies, setInCopies] = useState(true);
  const [typed, setTyped] = useState('');
  const [busy, setBusy] = useState(false);
  const { student, revision, name, copies } = erasure;
  const ready = isTyped(typed, name) && !busy && !looking;
  const keep = erasure.mentions
    .filter(({ place, isSure }) => isSure === turned.includes(place))
    .map(({ place }) => place);

  async function erase(event: FormEvent) {
    event.preventDefault();
    if (!ready) return;
    setBusy(true);
    const done = await eraseStudent(
      {
        type: 'student.erase',
        seen: revision,
        student,
        name: typed,
        called: [...called],
        keep,
        copies: inCopies,
      },
      erasure.ids,
      () => go('/students'),
    );
    if (!done) setBusy(false);
  }

  return (
    <div className="erase">
      <p className="form-care">{say.law}</p>
      <Part title={say.file.title}>
        <p>{say.file.text}</p>
        <p>
          <a
            className="button button-quiet"
            href={`/api/students/${encodeURIComponent(student)}/export`}
            download
          >
            {say.file.action}
          </a>
        </p>
      </Part>
      <Part title={say.goes.title}>
        <ul className="erase-goes">
          {sentencesOf(erasure).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <p className="faint">{say.goes.money}</p>
      </Part>
      <Part title={say.names.title}>
        <NamesElsewhere
          erasure={erasure}
          keep={keep}
          looking={looking}
          onTurn={(place) =>
            setTurned((now) => (now.includes(place) ? now.filter((one) => one !== place) : [...now, place]))
          }
          onCalled={onCalled}
        />
      </Part>
      <Part title={say.copies.title}>
        {copies === null ? (
          <p>{say.copies.server}</p>
        ) : copies.oldest === null || copies.newest === null ? (
          <p>{say.copies.none}</p>
        ) : (
          <>
            <Tick ticked={inCopies} onTick={setInCopies}>
              {say.copies.tick(copies.files)}
            </Tick>
            <p className="faint">
              {say.copies.days(format.day(copies.oldest, 'long'), format.day(copies.newest, 'long'))}{' '}
              {say.copies.help}
            </p>
          </>
        )}
        <p className="faint">{say.copies.elsewhere}</p>
      </Part>
      <Part title={say.confirm.title}>
        {/* A form of its own: no other field's Enter key erases anybody. */}
        <form className="erase-part" onSubmit={erase} noValidate>
          <div className="erase-name">
            <TextField
              label={say.confirm.name}
              value={typed}
              onValue={setTyped}
              help={say.confirm.help(name)}
            />
          </div>
          <div className="erase-deeds">
            <Button kind="primary" type="submit" pending={busy} isDisabled={!ready && !busy}>
              {say.confirm.action}
            </Button>
            <ButtonLink to={`/student/${student}`}>{say.confirm.leave}</ButtonLink>
          </div>
          {busy && <p role="status">{say.confirm.busy}</p>}
        </form>
      </Part>
    </div>
  );
}

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      <div className="erase-part">{children}</div>
    </section>
  );
}

/** What goes, in sentences. */
function sentencesOf(erasure: ErasureView): readonly string[] {
  const { courses, lessonsTaught, lessonsPlanned, levels, takes, sounds, groupsThatStay, groupsThatGo } =
    erasure;
  return [
    say.goes.person,
    ...(lessonsTaught + lessonsPlanned > 0
      ? [say.goes.lessons(lessonsTaught, lessonsPlanned)]
      : courses > 0
        ? [say.goes.noLessons]
        : []),
    ...(levels > 0 ? [say.goes.levels(levels)] : []),
    ...(takes > 0 ? [say.goes.takes(takes, sounds)] : []),
    ...groupsThatStay.map(say.goes.stays),
    ...groupsThatGo.map(say.goes.groupGoes),
    say.goes.changes,
  ];
}
