import { useQuery } from '@tanstack/react-query';
import type { TakeRow } from '#contract';
import { decodeSound, type Samples } from './decode-sound.ts';

/** The sound that is kept with a take; null until it is there, and where none is kept. */
export function useTakeSound({ id, soundBytes }: Pick<TakeRow, 'id' | 'soundBytes'>): Samples | null {
  const sound = useQuery({
    queryKey: ['takeSound', id],
    queryFn: () => loadSound(id),
    enabled: soundBytes !== null,
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
  return (soundBytes !== null && sound.data) || null;
}

async function loadSound(id: string): Promise<Samples | null> {
  const reply = await fetch(`/api/takes/${encodeURIComponent(id)}/sound`, { credentials: 'same-origin' });
  if (!reply.ok) return null;
  const decoded = await decodeSound(await reply.blob());
  return decoded.ok ? decoded.value : null;
}
