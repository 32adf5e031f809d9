import { Page } from '../../components/page.tsx';

export function TermScreen() {
  return <Page title="Term">{null}</Page>;
}
