import { Page } from '../../components/page.tsx';

export function UnitScreen() {
  return <Page title="Unit">{null}</Page>;
}
