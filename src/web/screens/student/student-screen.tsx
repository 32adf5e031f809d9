import { Page } from '../../components/page.tsx';

export function StudentScreen() {
  return <Page title="Student">{null}</Page>;
}
