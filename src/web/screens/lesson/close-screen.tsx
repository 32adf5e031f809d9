import { useParams } from 'wouter';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useFormat } from '../../hooks/use-format.ts';
import { words } from '../../words/index.ts';
import { useStudioNow } from '../day/use-studio-now.ts';
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
  const now = useStudioNow();
  const say = words.lesson.closing;
  if (!lesson || !told)
    return (
      <Page title={words.lesson.loading}>
        <Loaded view={view}>{() => null}</Loaded>
      </Page>
    );
  const { name } = lesson.learner;
  const tooSoon = now !== null && lesson.date > now.date;
  const closed = lesson.status === 'taught';
  return (
    <Page
      title={closed ? say.doneTitle(name) : say.title(name)}
      lead={`${words.lesson.number(lesson.number)} · ${format.day(lesson.date)} · ${format.time(lesson.time)}`}
      actions={!closed && <ButtonLink to={`/lesson/${id}`}>{say.back}</ButtonLink>}
    >
      {closed ? (
        <CloseDone lesson={lesson} post={post} />
      ) : tooSoon ? (
        <Empty
          sentence={say.tooSoon(format.day(lesson.date, 'full'))}
          action={<ButtonLink to={`/day/${lesson.date}`}>{say.backToDay}</ButtonLink>}
        />
      ) : (
        <CloseReview lesson={lesson} told={told} post={post} />
      )}
    </Page>
  );
}
