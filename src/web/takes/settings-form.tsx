// What is set before a take: the tempo it is played to, click and count-in; scale and chords where there are any.

import { SelectField, TextField } from '../components/field.tsx';
import { Tick } from '../components/tick.tsx';
import { words } from '../words/index.ts';
import { metres, type TakeSettings } from './take-settings.ts';

const say = words.takes.setUp;

export interface SettingsFormProps {
  readonly settings: TakeSettings;
  readonly onSettings: (settings: TakeSettings) => void;
  /** The field at fault, with its sentence. */
  readonly fault: { readonly field: string; readonly message: string } | null;
}

export function SettingsForm({ settings, onSettings, fault }: SettingsFormProps) {
  const set = (change: Partial<TakeSettings>) => onSettings({ ...settings, ...change });
  const faultOf = (field: string) => (fault?.field === field ? fault.message : null);
  return (
    <div className="form-part">
      <Tick ticked={settings.inTime} onTick={(inTime) => set({ inTime })}>
        {say.inTime}
      </Tick>
      {settings.inTime && (
        <>
          <div className="form-row">
            <TextField
              label={say.tempo}
              type="number"
              min={20}
              max={320}
              value={String(settings.tempo || '')}
              onValue={(tempo) => set({ tempo: Number(tempo) })}
              fault={faultOf('tempo')}
            />
            <SelectField
              label={say.metre}
              value={settings.metre.join('/')}
              onValue={(text) => set({ metre: metres.find((metre) => metre.join('/') === text) ?? [4, 4] })}
              options={metres.map((metre) => ({ value: metre.join('/'), label: metre.join('/') }))}
            />
            <SelectField
              label={say.countIn}
              value={String(settings.countInBars)}
              onValue={(bars) => set({ countInBars: Number(bars) })}
              options={['0', '1', '2'].map((bars) => ({ value: bars, label: bars }))}
            />
          </div>
          <Tick ticked={settings.click} onTick={(click) => set({ click })}>
            {say.click}
          </Tick>
        </>
      )}
      <details>
        <summary>{say.more}</summary>
        <div className="form-row">
          <TextField
            label={say.scale}
            value={settings.scale}
            onValue={(scale) => set({ scale })}
            help={say.scaleHelp}
            fault={faultOf('scale')}
          />
          <TextField
            label={say.chart}
            value={settings.chart}
            onValue={(chart) => set({ chart })}
            help={say.chartHelp}
            fault={faultOf('chart')}
          />
        </div>
      </details>
    </div>
  );
}
