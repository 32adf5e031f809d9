import { Page } from '../../components/page.tsx';

export function StudentsScreen() {
  return <Page title="Students">{null}</Page>;
}
