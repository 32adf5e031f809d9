// Where a screen's own bug ends: the page says so and offers to load again. The one class, because React asks for one.

import { Component, type ReactNode } from 'react';
import { Button } from '../components/button.tsx';
import { words } from '../words/index.ts';

interface StumbleProps {
  readonly children: ReactNode;
}

export class Stumble extends Component<StumbleProps, { readonly fell: boolean }> {
  override state = { fell: false };

  static getDerivedStateFromError() {
    return { fell: true };
  }

  override render(): ReactNode {
    if (!this.state.fell) return this.props.children;
    return (
      <main className="alone">
        <h1>{words.frame.fell.title}</h1>
        <p className="lead">{words.frame.fell.text}</p>
        <Button kind="primary" onPress={() => window.location.reload()}>
          {words.frame.fell.action}
        </Button>
      </main>
    );
  }
}
