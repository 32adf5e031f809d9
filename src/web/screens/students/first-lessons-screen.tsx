// Everybody who waits for a first lesson, on one page: after an import, and whenever somebody waits.

import { useLocation } from 'wouter';
import { ButtonLink } from '../../components/button-link.tsx';
import { Empty } from '../../components/empty.tsx';
import { findWaiting } from '../../components/find-waiting.ts';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useStudents, useStudio } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { FirstLessons } from './first-lessons.tsx';

const says = words.students.first;

export function FirstLessonsScreen() {
  const view = useStudents();
  const studio = useStudio();
  const [, navigate] = useLocation();
  return (
    <Page title={says.title} lead={says.lead}>
      <Loaded view={view}>
        {(students) => {
          const waiting = findWaiting(students);
          return waiting.length === 0 ? (
            <Empty
              sentence={says.everybody}
              action={
                <ButtonLink to="/" kind="primary" large>
                  {says.toDay}
                </ButtonLink>
              }
            />
          ) : (
            <Loaded view={studio}>
              {({ today }) => (
                <FirstLessons
                  waiting={waiting}
                  today={today}
                  onDone={() => navigate('/students')}
                  onLater={() => navigate('/students')}
                />
              )}
            </Loaded>
          );
        }}
      </Loaded>
    </Page>
  );
}
