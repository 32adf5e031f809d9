import { Page } from '../../components/page.tsx';

export function WelcomeScreen() {
  return <Page title="Welcome">{null}</Page>;
}
