// What is set before a take: what is heard while playing, the tempo, the count-in; scale and chords where there are any.

import { SelectField, TextField } from '../components/field.tsx';
import { words } from '../words/index.ts';
import { companies, metres, type TakeSettings } from './take-settings.ts';

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
  const chart = (
    <TextField
      label={say.chart}
      value={settings.chart}
      onValue={(text) => set({ chart: text })}
      help={say.chartHelp}
      fault={faultOf('chart')}
    />
  );
  return (
    <div className="form-part">
      <SelectField
        label={say.company}
        value={settings.company}
        onValue={(company) => set({ company })}
        options={companies.map((value) => ({ value, label: say.companies[value] }))}
      />
      {settings.company !== 'nothing' && (
        <div className="form-row">
          <TextField
            label={say.tempo}
            type="number"
            min={30}
            max={320}
            value={String(settings.tempo || '')}
            onValue={(tempo) => set({ tempo: Number(tempo), isTempoTold: true })}
            fault={faultOf('tempo')}
          />
          {settings.company !== 'band' && (
            <SelectField
              label={say.metre}
              value={settings.metre.join('/')}
              onValue={(text) => set({ metre: metres.find((metre) => metre.join('/') === text) ?? [4, 4] })}
              options={metres.map((metre) => ({ value: metre.join('/'), label: metre.join('/') }))}
            />
          )}
          <SelectField
            label={say.countIn}
            value={String(settings.countInBars)}
            onValue={(bars) => set({ countInBars: Number(bars) })}
            options={['0', '1', '2'].map((bars) => ({ value: bars, label: bars }))}
          />
        </div>
      )}
      {settings.company === 'band' && chart}
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
          {settings.company !== 'band' && chart}
        </div>
      </details>
    </div>
  );
}
