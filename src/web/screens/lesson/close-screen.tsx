import { Page } from '../../components/page.tsx';

export function CloseScreen() {
  return <Page title="Close">{null}</Page>;
}
