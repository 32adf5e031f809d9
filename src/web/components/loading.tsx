// What stands in a view's place while it is fetched or when it cannot be: never a blank page.

import type { ReactNode } from 'react';
import type { ApiFault } from '../app/api.ts';
import { words } from '../words/index.ts';
import { Button } from './button.tsx';
import './loading.css';

interface Asked<View> {
  readonly data: View | undefined;
  readonly error: ApiFault | null;
  readonly refetch: () => unknown;
}

export interface LoadedProps<View> {
  /** A result of hooks/use-view.ts. */
  readonly view: Asked<View>;
  readonly children: (data: View) => ReactNode;
}

/** Draws the view once it is there; before that says so, and says what is wrong when it cannot come. */
export function Loaded<View>({ view, children }: LoadedProps<View>) {
  if (view.data !== undefined) return children(view.data);
  if (view.error) {
    return (
      <div className="not-loaded" role="alert">
        <p>{view.error.message}</p>
        <Button onPress={() => void view.refetch()}>{words.frame.tryAgain}</Button>
      </div>
    );
  }
  return (
    <p className="loading" role="status">
      {words.frame.loading}
    </p>
  );
}
