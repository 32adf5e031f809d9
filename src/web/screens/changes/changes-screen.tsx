import { Page } from '../../components/page.tsx';

export function ChangesScreen() {
  return <Page title="Changes">{null}</Page>;
}
