import { useParams } from 'wouter';
import { ButtonLink } from '../../components/button-link.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { CloseDone } from './close-done.tsx';
import { CloseReview } from './close-review.tsx';
import { useLessonDesk } from './use-lesson-desk.ts';
import './lesson.css';
import './lesson-layout.css';
import './close.css';

export function CloseScreen() {
  const { id = '' } = useParams<{ id: string }>();
  return <CloseOf key={id} id={id} />;
}

function CloseOf({ id }: { readonly id: string }) {
  const { lesson, told, view, post } = useLessonDesk(id);
  const format = useFormat();
  const say = words.lesson.closing;
  if (!lesson || !told)
    return (
      <Page title={words.lesson.loading}>
        <Loaded view={view}>{() => null}</Loaded>
      </Page>
    );
  const { name } = lesson.learner;
  const closed = lesson.status === 'taught';
  return (
    <Page
      title={closed ? say.doneTitle(name) : say.title(name)}
      lead={`${words.lesson.number(lesson.number)} · ${format.day(lesson.date)} · ${format.time(lesson.time)}`}
      actions={!closed && <ButtonLink to={`/lesson/${id}`}>{say.back}</ButtonLink>}
    >
      {closed ? <CloseDone lesson={lesson} /> : <CloseReview lesson={lesson} told={told} post={post} />}
    </Page>
  );
}
