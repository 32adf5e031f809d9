// The band as company for a take: the player of the backing screen on the microphone's own clock, so that where bar 1 sounds
// is known to the sample.

import { type BackingMaterial, backingToSpec } from '#music';
import { gainByFeel } from '../sound/feel-gain.ts';
import type { Player } from '../sound/player.ts';
import type { Company } from './company.ts';

/** Bass, keys and drums well below the player's own sound. Our own choice. */
const loudness = 0.7;

/**
 * Gets the band ready before anything is recorded, so that its loading does not disturb the microphone. False when it could
 * not be loaded.
 */
export function readyBand(player: Player, material: BackingMaterial): Promise<boolean> {
  const spec = backingToSpec(material);
  player.volume(loudness);
  player.load({ spec, seed: 1, loop: null }, gainByFeel[spec.feel]);
  return new Promise((done) => {
    const look = () => {
      const { status } = player.state();
      if (status !== 'ready' && status !== 'failed') return;
      unsubscribe();
      done(status === 'ready');
    };
    const unsubscribe = player.subscribe(look);
    look();
  });
}

/** Starts a band that is ready; it counts in and plays its choruses. */
export function startBand(player: Player): Company {
  let barOneAt: number | null = null;
  const look = () => {
    barOneAt = player.barOneAt() ?? barOneAt;
  };
  const unsubscribe = player.subscribe(look);
  void player.play();
  return {
    barOneAt() {
      look();
      return barOneAt;
    },
    stop() {
      look();
      unsubscribe();
      player.stop();
    },
  };
}
