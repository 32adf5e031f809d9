// A student's own copy of a unit in the editor: how it differs from the library, and taking it one way or the other.

import { useState } from 'react';
import { useLocation } from 'wouter';
import type { CourseUnitCompareView } from '#contract';
import type { Id } from '#core';
import { compareUnits, formatUnitDifference, type UnitDocument } from '#planning';
import { showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { useCourse, useCourseUnit } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { Clash } from './clash.tsx';
import { createSender } from './send-once.ts';
import { documentToDraft } from './unit-draft.ts';
import { UnitEditor } from './unit-editor.tsx';

const says = words.units.copy;

export function AdaptCopy({ id }: { readonly id: Id<'course-unit'> }) {
  const view = useCourseUnit(id);
  const [round, setRound] = useState(0);
  if (view.data) return <Adapt key={round} view={view.data} onFresh={() => setRound(round + 1)} />;
  return (
    <Page title={words.units.unit.title}>
      <Loaded view={view}>{() => null}</Loaded>
    </Page>
  );
}

interface AdaptProps {
  readonly view: CourseUnitCompareView;
  /** The copy is another one now: begin again from it. */
  readonly onFresh: () => void;
}

const same = (a: UnitDocument, b: UnitDocument) => JSON.stringify(a) === JSON.stringify(b);

function Adapt({ view, onFresh }: AdaptProps) {
  const [, navigate] = useLocation();
  const send = useCommand();
  const [sendOnce] = useState(createSender);
  const [begun, setBegun] = useState(view.document);
  const [from] = useState(() => documentToDraft(view.document));
  const [clash, setClash] = useState(false);
  const learner = useCourse(view.course).data?.learner;
  const student = learner?.student ?? learner?.members[0]?.student;
  const toCourse = student ? `/student/${student}?course=${view.course}` : '/students';
  const title = words.units.editor.copyTitle(view.learner, view.document.title);

  async function save(document: UnitDocument): Promise<boolean> {
    // The course's number moves with every lesson; only another copy is something to be asked about.
    if (!same(begun, view.document)) {
      setClash(true);
      return false;
    }
    const reply = await sendOnce({
      type: 'courseUnit.change',
      seen: view.courseRevision,
      courseUnit: view.id,
      document,
    });
    if (!reply.ok && reply.error.kind === 'ChangedElsewhere') setClash(true);
    else if (!reply.ok) showFault(reply.error);
    return reply.ok;
  }
  const take = async (type: 'courseUnit.takeIntoLibrary' | 'courseUnit.takeFromLibrary') => {
    if (await send({ type, seen: view.courseRevision, courseUnit: view.id })) onFresh();
  };

  return (
    <Page
      title={title}
      lead={says.lead(view.learner)}
      actions={
        <ButtonLink to={toCourse} kind="plain">
          {says.toCourse(view.learner)}
        </ButtonLink>
      }
    >
      <UnitEditor
        place={view.id}
        from={from}
        newest={view.document.version}
        saveLabel={words.units.editor.saveCopy}
        onSave={save}
        onLeave={(saved) => (saved ? onFresh() : navigate(toCourse))}
        before={(document, touched) => (
          <Differences library={view.library} document={document} touched={touched} onTake={take} />
        )}
      >
        {() =>
          clash && (
            <Clash sentence={words.units.editor.clashCopy}>
              <p className="form-row">
                <Button onPress={onFresh}>{words.units.editor.lookAtNewest}</Button>
                <Button
                  onPress={() => {
                    setBegun(view.document);
                    setClash(false);
                  }}
                >
                  {words.units.editor.saveOver}
                </Button>
              </p>
            </Clash>
          )
        }
      </UnitEditor>
    </Page>
  );
}

interface DifferencesProps {
  readonly library: UnitDocument | null;
  readonly document: UnitDocument;
  readonly touched: boolean;
  readonly onTake: (way: 'courseUnit.takeIntoLibrary' | 'courseUnit.takeFromLibrary') => Promise<void>;
}

function Differences({ library, document, touched, onTake }: DifferencesProps) {
  const sentences = library ? compareUnits(library, document).map(formatUnitDifference) : [];
  return (
    <section className="form-part" aria-label={says.differences}>
      <h2>{says.differences}</h2>
      {library === null ? (
        <p className="soft">{says.noLibrary}</p>
      ) : sentences.length === 0 ? (
        <p className="soft">{says.same}</p>
      ) : (
        <ul className="editor-differences">
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {(library === null || sentences.length > 0) && (
        <ul className="editor-ways">
          <li>
            <Button isDisabled={touched} onPress={() => void onTake('courseUnit.takeIntoLibrary')}>
              {says.takeInto}
            </Button>
            <span className="faint">{touched ? says.saveFirst : says.takeIntoHelp}</span>
          </li>
          {library !== null && (
            <li>
              <Button isDisabled={touched} onPress={() => void onTake('courseUnit.takeFromLibrary')}>
                {says.takeFrom}
              </Button>
              <span className="faint">{touched ? says.saveFirst : says.takeFromHelp}</span>
            </li>
          )}
        </ul>
      )}
    </section>
  );
}
