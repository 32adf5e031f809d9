// Paper, hall or the system's choice.

import { themes } from '../app/theme.ts';
import { useTheme } from '../hooks/use-theme.ts';
import { words } from '../words/index.ts';
import { SelectField } from './field.tsx';

export function ThemeSwitch({ labelHidden = false }: { readonly labelHidden?: boolean }) {
  const [theme, setTheme] = useTheme();
  return (
    <SelectField
      label={words.frame.theme}
      labelHidden={labelHidden}
      value={theme}
      onValue={setTheme}
      options={themes.map((value) => ({ value, label: words.frame.themes[value] }))}
    />
  );
}
