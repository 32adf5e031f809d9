// A take that was kept, looked at again: its figures, and its sound where that is kept too.

import { useQuery } from '@tanstack/react-query';
import type { TakeView } from '#contract';
import { Dialog } from '../components/dialog.tsx';
import { Loaded } from '../components/loading.tsx';
import { useFormat } from '../hooks/use-format.ts';
import { useTake } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';
import { decodeSound, type Samples } from './decode-sound.ts';
import { TakeResult } from './take-result.tsx';

export function KeptTake({ id, onClose }: { readonly id: string; readonly onClose: () => void }) {
  const take = useTake(id);
  const format = useFormat();
  const title = take.data
    ? words.takes.row(take.data.title, format.day(take.data.date, 'day'))
    : words.takes.loading;
  return (
    <Dialog title={title} open onClose={onClose} width="wide">
      <Loaded view={take}>{(view) => <Kept take={view} />}</Loaded>
    </Dialog>
  );
}

function Kept({ take }: { readonly take: TakeView }) {
  const sound = useQuery({
    queryKey: ['takeSound', take.id],
    queryFn: () => loadSound(take.id),
    enabled: take.soundBytes !== null,
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 60_000,
  });
  return <TakeResult take={take} sound={(take.soundBytes !== null && sound.data) || null} />;
}

async function loadSound(id: string): Promise<Samples | null> {
  const reply = await fetch(`/api/takes/${encodeURIComponent(id)}/sound`, { credentials: 'same-origin' });
  if (!reply.ok) return null;
  const decoded = await decodeSound(await reply.blob());
  return decoded.ok ? decoded.value : null;
}
