import { Page } from '../../components/page.tsx';

export function LessonScreen() {
  return <Page title="Lesson">{null}</Page>;
}
