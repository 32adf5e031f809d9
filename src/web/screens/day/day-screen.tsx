import { Page } from '../../components/page.tsx';

export function DayScreen() {
  return <Page title="Day">{null}</Page>;
}
