import { Page } from '../../components/page.tsx';

export function SkillsScreen() {
  return <Page title="Skills">{null}</Page>;
}
