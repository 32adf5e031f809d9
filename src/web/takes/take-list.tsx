// A student's takes: newest first, to look at, to lay side by side, to discard; and the consent they rest on.

import { lazy, Suspense, useState } from 'react';
import type { CourseView, TakeRow, TakesView } from '#contract';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { Tick } from '../components/tick.tsx';
import { useCommand } from '../hooks/use-command.ts';
import { useFormat } from '../hooks/use-format.ts';
import { useTakes } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { ConsentState } from './consent-state.tsx';
import { formatLength } from './format-figure.ts';
import './take-list.css';

const say = words.takes;

// Loaded when they are wanted: the student's page comes without them.
const CompareTakes = lazy(async () => ({ default: (await import('./compare-takes.tsx')).CompareTakes }));
const KeptTake = lazy(async () => ({ default: (await import('./kept-take.tsx')).KeptTake }));
const RecordTake = lazy(async () => ({ default: (await import('./record-take.tsx')).RecordTake }));

export interface TakeListProps {
  readonly course: CourseView;
  readonly student: string;
}

export function TakeList({ course, student }: TakeListProps) {
  const takes = useTakes(student);
  return (
    <section className="student-part take-list" aria-labelledby="takes-title">
      <h2 id="takes-title">{say.title}</h2>
      <Loaded view={takes}>{(view) => <Takes course={course} takes={view} />}</Loaded>
    </section>
  );
}

type Opened =
  | { readonly what: 'record' }
  | { readonly what: 'look' | 'erase'; readonly take: TakeRow }
  | { readonly what: 'compare'; readonly ids: readonly [string, string] };

function Takes({ course, takes }: { readonly course: CourseView; readonly takes: TakesView }) {
  const send = useCommand();
  const [opened, setOpened] = useState<Opened | null>(null);
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const close = () => setOpened(null);
  const chosen = takes.takes.filter((take) => ticked.includes(take.id));
  const [later, earlier] = chosen;
  return (
    <>
      {takes.takes.length === 0 ? (
        <p className="soft">{say.empty}</p>
      ) : (
        <ul className="take-rows">
          {takes.takes.map((take) => (
            <TakeLine
              key={take.id}
              take={take}
              ticked={ticked.includes(take.id)}
              onTick={(on) =>
                setTicked((now) => (on ? [...now.slice(-1), take.id] : now.filter((id) => id !== take.id)))
              }
              onOpen={(what) => setOpened({ what, take })}
              onDiscard={() => void send({ type: 'take.discard', take: take.id })}
            />
          ))}
        </ul>
      )}
      <div className="take-deeds">
        <Button onPress={() => setOpened({ what: 'record' })}>{say.record}</Button>
        {takes.takes.length > 1 && (
          <Button
            isDisabled={!later || !earlier}
            onPress={() => {
              if (later && earlier) setOpened({ what: 'compare', ids: [earlier.id, later.id] });
            }}
          >
            {say.compare}
          </Button>
        )}
      </div>
      {takes.takes.length > 1 && <p className="faint">{say.compareChoose}</p>}
      <ConsentState takes={takes} />
      <Suspense fallback={null}>
        {opened?.what === 'record' && (
          <RecordTake
            of={{
              student: takes.student,
              name: takes.name,
              course: course.id,
              lesson: null,
              practiceOf: null,
              activity: null,
              title: '',
              instrument: course.learner.instrument,
              materials: [],
              skills: course.skills.map(({ skill, title }) => ({ skill, title, wanted: null })),
              checks: [],
            }}
            onClose={close}
          />
        )}
        {opened?.what === 'look' && <KeptTake id={opened.take.id} course={course} onClose={close} />}
        {opened?.what === 'compare' && <CompareTakes ids={opened.ids} onClose={close} />}
      </Suspense>
      {opened?.what === 'erase' && (
        <Dialog title={say.eraseTitle} open onClose={close}>
          <p>{say.eraseText}</p>
          <div className="take-deeds">
            <Button
              kind="primary"
              onPress={() => {
                void send({ type: 'take.eraseSounds', takes: [opened.take.id] });
                close();
              }}
            >
              {say.eraseDo}
            </Button>
            <Button onPress={close}>{say.leave}</Button>
          </div>
        </Dialog>
      )}
    </>
  );
}

interface TakeLineProps {
  readonly take: TakeRow;
  readonly ticked: boolean;
  readonly onTick: (ticked: boolean) => void;
  readonly onOpen: (what: 'look' | 'erase') => void;
  readonly onDiscard: () => void;
}

function TakeLine({ take, ticked, onTick, onOpen, onDiscard }: TakeLineProps) {
  const format = useFormat();
  const name = say.row(take.title, format.day(take.date, 'day'));
  const facts = [
    say.facts(formatLength(take.seconds), take.notes),
    ...(take.practiceOf === null ? [] : [say.atHome]),
    take.soundBytes === null ? say.figuresOnly : say.withSound,
    ...take.proves.map(({ title, level }) => say.shows(title, words.levels[level].name.toLowerCase())),
  ];
  return (
    <li className="take-row">
      <Tick ticked={ticked} onTick={onTick} label={say.chooseToCompare(name)} />
      <div className="take-words">
        <span className="take-name">{name}</span>
        <span className="faint">{facts.join(' · ')}</span>
      </div>
      <div className="take-row-deeds">
        <Button aria-label={`${say.open}: ${name}`} onPress={() => onOpen('look')}>
          {say.open}
        </Button>
        {take.soundBytes !== null && (
          <Button kind="plain" aria-label={`${say.erase}: ${name}`} onPress={() => onOpen('erase')}>
            {say.erase}
          </Button>
        )}
        <Button kind="plain" aria-label={`${say.discard}: ${name}`} onPress={onDiscard}>
          {say.discard}
        </Button>
      </div>
    </li>
  );
}
