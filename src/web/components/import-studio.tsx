// Brings a whole studio from the file that Export made, into an empty one.

import { useState } from 'react';
import { postText } from '../app/api.ts';
import { queryClient } from '../app/query-client.ts';
import { showFault } from '../app/send.ts';
import { dropToasts, showToast } from '../app/toasts.ts';
import { words } from '../words/index.ts';
import { ChooseFile } from './choose-file.tsx';

const says = words.settings.keep;

export function ImportStudio({ onDone }: { readonly onDone?: () => void }) {
  const [busy, setBusy] = useState(false);
  async function bring(text: string) {
    setBusy(true);
    const reply = await postText<unknown>('/api/import', text);
    setBusy(false);
    if (!reply.ok) {
      showFault(reply.error);
      return;
    }
    dropToasts();
    showToast({ text: says.imported });
    await queryClient.invalidateQueries();
    onDone?.();
  }
  return (
    <ChooseFile
      label={busy ? says.importing : says.importAction}
      accept={['.json', 'application/json']}
      pending={busy}
      onText={(text) => void bring(text)}
    />
  );
}
