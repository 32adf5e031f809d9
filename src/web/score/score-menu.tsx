import { MenuSheet } from '../components/menu.tsx';
import { words } from '../words/index.ts';
import { isMovable, isSettable } from './describe.ts';
import type { ScoreItem } from './score-items.ts';

const say = words.score;

export type ScoreDeed =
  | 'pin'
  | 'unpin'
  | 'moveTo'
  | 'minutes'
  | 'setAside'
  | 'setAsideUntil'
  | 'whyHere'
  | 'open'
  | 'cancel'
  | 'miss'
  | 'move'
  | 'keepFree'
  | 'use'
  | 'restore';

interface Props {
  readonly item: ScoreItem;
  readonly today: string;
  readonly anchor: Element;
  readonly onDeed: (deed: ScoreDeed) => void;
  readonly onClose: () => void;
}

/** What can be done with a bar or a segment, as a menu beside it. */
export function ScoreMenu({ item, today, anchor, onDeed, onClose }: Props) {
  const deeds = deedsFor(item, today);
  return (
    <MenuSheet
      label={say.menu.of(item.description.title)}
      choices={deeds.map(({ deed, label }) => ({ label, act: () => onDeed(deed) }))}
      triggerRef={{ current: anchor }}
      isOpen
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
      placement="bottom start"
    />
  );
}

/** The deeds that make sense for an item, most wanted first. */
export function deedsFor(
  item: ScoreItem,
  today: string,
): readonly { readonly deed: ScoreDeed; readonly label: string }[] {
  const of = (deed: ScoreDeed, label: string) => ({ deed, label });
  if (item.kind === 'rest') return [];
  const { bar } = item;
  if (item.kind === 'segment') {
    const { segment } = item;
    const movable = isMovable(segment, bar);
    return [
      ...(movable ? [segment.pinned ? of('unpin', say.menu.unpin) : of('pin', say.menu.pin)] : []),
      ...(movable ? [of('moveTo', say.menu.moveTo), of('minutes', say.menu.minutes)] : []),
      ...(isSettable(segment, bar)
        ? [of('setAside', say.menu.setAside), of('setAsideUntil', say.menu.setAsideUntil)]
        : []),
      of('whyHere', say.menu.whyHere),
      of('open', bar.status === 'planned' && bar.date <= today ? say.menu.teach : say.menu.openLesson),
    ];
  }
  switch (bar.status) {
    case 'planned':
      return [
        of('open', bar.date <= today ? say.menu.teach : say.menu.open),
        bar.barred ? of('use', say.menu.use) : of('keepFree', say.menu.keepFree),
        of('move', say.menu.move),
        of('miss', say.menu.miss),
        of('cancel', say.menu.cancel),
      ];
    case 'taught':
      return [of('open', say.menu.open)];
    case 'missed':
    case 'cancelled':
      return [of('restore', say.menu.restore), of('move', say.menu.move), of('open', say.menu.open)];
  }
}
