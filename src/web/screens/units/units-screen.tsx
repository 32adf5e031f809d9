import { Page } from '../../components/page.tsx';

export function UnitsScreen() {
  return <Page title="Units">{null}</Page>;
}
