// One player for one place on a screen; it is made when first wanted and closed with its place.

import { useEffect, useState, useSyncExternalStore } from 'react';
import { createPlayer, type Player, type PlayerState } from './player.ts';

const empty: PlayerState = { status: 'empty', bar: null, chorus: 0, nth: 0, late: 0 };
const never = () => () => {};

export function usePlayer(): { readonly player: Player | null; readonly state: PlayerState } {
  const [player, setPlayer] = useState<Player | null>(null);
  useEffect(() => {
    const made = createPlayer();
    setPlayer(made);
    return () => made.close();
  }, []);
  const state = useSyncExternalStore(player?.subscribe ?? never, player?.state ?? (() => empty));
  return { player, state };
}
