// The editor over the library: a new unit, or the next version of one.

import { useState } from 'react';
import { useLocation } from 'wouter';
import type { UnitDocument } from '#planning';
import { showFault } from '../../app/send.ts';
import { Button } from '../../components/button.tsx';
import { Page } from '../../components/page.tsx';
import { useUnits } from '../../hooks/use-view.ts';
import { words } from '../../words/index.ts';
import { Clash } from './clash.tsx';
import { createSender } from './send-once.ts';
import { titleToUnitId } from './slug.ts';
import { documentToDraft, draftAsNew, newUnitDraft, type UnitDraft } from './unit-draft.ts';
import { UnitEditor } from './unit-editor.tsx';

const says = words.units.editor;

/** A new unit, empty or after the likeness of another. */
export function NewUnit({ like }: { readonly like: UnitDocument | null }) {
  const [from] = useState(() =>
    like ? draftAsNew(documentToDraft(like), words.units.unit.copyOf(like.title)) : newUnitDraft,
  );
  return <WriteUnit from={from} title={says.newTitle} newest={0} />;
}

/** The next version of a unit. */
export function ChangeUnit({ unit, newest }: { readonly unit: UnitDocument; readonly newest: number }) {
  const [from] = useState(() => documentToDraft(unit));
  return <WriteUnit from={from} title={says.changeTitle(unit.title)} newest={newest} />;
}

interface WriteUnitProps {
  readonly from: UnitDraft;
  readonly title: string;
  readonly newest: number;
}

function WriteUnit({ from, title, newest }: WriteUnitProps) {
  const [, navigate] = useLocation();
  const [sendOnce] = useState(createSender);
  const [clash, setClash] = useState<UnitDocument | null>(null);
  const units = useUnits().data?.units ?? [];
  const { id } = from;

  async function save(document: UnitDocument, draft: UnitDraft): Promise<boolean> {
    setClash(null);
    const reply = await sendOnce({ type: 'unit.save', seenVersion: draft.version, document });
    if (reply.ok) return true;
    const elsewhere =
      reply.error.kind === 'ChangedElsewhere' || (reply.error.kind === 'NotFound' && id !== null);
    if (elsewhere) setClash(document);
    else showFault(reply.error);
    return false;
  }
  const asOwn = (document: UnitDocument): UnitDocument => {
    const twin = units.some((unit) => unit.title === document.title);
    const own = twin ? says.keptTitle(document.title).slice(0, 120) : document.title;
    const taken = new Set<string>([...units.map((unit) => unit.id), document.id]);
    return { ...document, id: titleToUnitId(own, taken), title: own, version: 1 };
  };

  return (
    <Page title={title}>
      <UnitEditor
        place={id ?? 'new'}
        from={from}
        newest={newest}
        saveLabel={id === null ? says.saveNew : says.save}
        onSave={save}
        onLeave={(saved) => navigate(saved ? `/unit/${saved.id}` : id ? `/unit/${id}` : '/units')}
      >
        {(finish) =>
          clash && (
            <Clash sentence={says.clash}>
              <p className="form-row">
                {id !== null && <Button onPress={() => navigate(`/unit/${id}`)}>{says.lookAtNewest}</Button>}
                <KeepMine
                  onKeep={async () => {
                    const own = asOwn(clash);
                    const reply = await sendOnce({ type: 'unit.save', seenVersion: 0, document: own });
                    if (reply.ok) {
                      finish();
                      navigate(`/unit/${own.id}`);
                    } else showFault(reply.error);
                  }}
                />
              </p>
              {id !== null && <p className="faint">{says.clashHelp}</p>}
            </Clash>
          )
        }
      </UnitEditor>
    </Page>
  );
}

function KeepMine({ onKeep }: { readonly onKeep: () => Promise<void> }) {
  const [busy, setBusy] = useState(false);
  return (
    <Button
      pending={busy}
      onPress={async () => {
        setBusy(true);
        await onKeep();
        setBusy(false);
      }}
    >
      {says.keepMine}
    </Button>
  );
}
