import { Page } from '../../components/page.tsx';

export function ImportScreen() {
  return <Page title="Import">{null}</Page>;
}
