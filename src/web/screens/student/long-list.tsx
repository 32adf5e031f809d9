import { type ReactNode, useState } from 'react';
import { Button } from '../../components/button.tsx';
import { words } from '../../words/index.ts';

interface Props<Item> {
  readonly items: readonly Item[];
  /** How many are shown before the rest is asked for. */
  readonly most: number;
  readonly className?: string;
  readonly children: (item: Item) => ReactNode;
}

/** A list that shows its first items, and the rest when asked. `children` draws one `li`. */
export function LongList<Item>({ items, most, className = 'plain-list', children }: Props<Item>) {
  const [all, setAll] = useState(false);
  const rest = items.length - most;
  return (
    <>
      <ul className={className}>{(all || rest <= 1 ? items : items.slice(0, most)).map(children)}</ul>
      {rest > 1 && (
        <Button kind="plain" className="long-list-more" aria-expanded={all} onPress={() => setAll(!all)}>
          {all ? words.student.fewer : words.student.more(rest)}
        </Button>
      )}
    </>
  );
}
