import { useParams } from 'wouter';
import { Button } from '../../components/button.tsx';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useCommand } from '../../hooks/use-command.ts';
import { words } from '../../words/index.ts';
import { Teaching } from './teaching.tsx';
import { useLessonDesk } from './use-lesson-desk.ts';
import './lesson.css';
import './lesson-layout.css';

export function LessonScreen() {
  const { id = '' } = useParams<{ id: string }>();
  return <LessonOf key={id} id={id} />;
}

function LessonOf({ id }: { readonly id: string }) {
  const desk = useLessonDesk(id);
  const send = useCommand();
  const { lesson, told } = desk;
  if (!lesson || !told)
    return (
      <Page title={words.lesson.loading}>
        <Loaded view={desk.view}>{() => null}</Loaded>
      </Page>
    );
  if (lesson.status === 'cancelled' || lesson.status === 'missed')
    return (
      <Page title={words.lesson.title(lesson.learner.name)}>
        <Empty
          sentence={words.lesson.off(lesson.status, lesson.reason)}
          action={
            <>
              <Button
                kind="primary"
                large
                onPress={() => void send({ type: 'lesson.restore', lesson: lesson.id })}
              >
                {words.lesson.restore}
              </Button>
              <ButtonLink to={`/day/${lesson.date}`} large>
                {words.lesson.closing.backToDay}
              </ButtonLink>
            </>
          }
        />
      </Page>
    );
  return (
    <Page title={words.lesson.title(lesson.learner.name)} bare>
      <Teaching lesson={lesson} told={told} post={desk.post} />
    </Page>
  );
}
