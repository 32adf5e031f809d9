import { Page } from '../../components/page.tsx';

export function SettingsScreen() {
  return <Page title="Settings">{null}</Page>;
}
