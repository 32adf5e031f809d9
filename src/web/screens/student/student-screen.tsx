import { useParams } from 'wouter';
import { Loaded } from '../../components/loading.tsx';
import { Page } from '../../components/page.tsx';
import { useCourse, useStudent } from '../../hooks/use-view.ts';
import { CourseScore } from '../../score/course-score.tsx';

export function StudentScreen() {
  const { id } = useParams<{ id: string }>();
  const student = useStudent(id);
  const course = useCourse(student.data?.courses[0]?.id ?? null);
  return (
    <Page title={student.data?.name ?? ''} wide>
      <Loaded view={course}>{(view) => <CourseScore course={view} />}</Loaded>
    </Page>
  );
}
