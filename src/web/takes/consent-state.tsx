// The consent that stands, and its withdrawal, which offers to delete the sounds.

import { useState } from 'react';
import type { TakesView } from '#contract';
import { Button } from '../components/button.tsx';
import { Dialog } from '../components/dialog.tsx';
import { Tick } from '../components/tick.tsx';
import { useCommand } from '../hooks/use-command.ts';
import { useFormat } from '../hooks/use-format.ts';
import { useStudio } from '../hooks/use-view.ts';
import { words } from '../words/index.ts';

const say = words.takes.consent;

export function ConsentState({ takes }: { readonly takes: TakesView }) {
  const format = useFormat();
  const [withdrawing, setWithdrawing] = useState(false);
  const { consent, withdrawnOn } = takes;
  return (
    <div className="consent-state">
      <p>
        {consent !== null
          ? say.standing(consent.givenBy, consent.relation, format.day(consent.on, 'long'))
          : withdrawnOn !== null
            ? say.withdrawn(format.day(withdrawnOn, 'long'))
            : takes.isMinor
              ? say.noneYet
              : say.noneNeeded}
      </p>
      {consent !== null && (
        <Button kind="plain" onPress={() => setWithdrawing(true)}>
          {say.withdraw}
        </Button>
      )}
      {withdrawing && <Withdraw takes={takes} onClose={() => setWithdrawing(false)} />}
    </div>
  );
}

function Withdraw({ takes, onClose }: { readonly takes: TakesView; readonly onClose: () => void }) {
  const send = useCommand();
  const today = useStudio().data?.today;
  const sounds = takes.takes.filter((take) => take.soundBytes !== null).map((take) => take.id);
  const [erases, setErases] = useState(false);
  const { consent } = takes;
  const withdraw = async () => {
    if (consent === null || today === undefined) return;
    const done = await send({ type: 'consent.withdraw', consent: consent.id, on: today });
    if (done && erases && sounds.length > 0) await send({ type: 'take.eraseSounds', takes: sounds });
    onClose();
  };
  return (
    <Dialog title={say.withdrawTitle} open onClose={onClose}>
      <p>{say.withdrawText}</p>
      {sounds.length > 0 && (
        <Tick ticked={erases} onTick={setErases}>
          {say.withdrawSounds(sounds.length)}
        </Tick>
      )}
      <div className="take-deeds">
        <Button kind="primary" onPress={() => void withdraw()}>
          {say.withdrawDo}
        </Button>
        <Button onPress={onClose}>{words.takes.leave}</Button>
      </div>
    </Dialog>
  );
}
